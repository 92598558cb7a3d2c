#include "slabtide/cli/command/compare_command.h"

#include <ostream>

#include "slabtide/cli/line/progress.h"
#include "slabtide/cli/request/output.h"
#include "slabtide/cli/request/planned_job.h"
#include "slabtide/report/text/text_compare.h"

namespace slabtide {

namespace {

/// Enough for an average and a bad day; every choice is tried on the same days.
constexpr std::size_t compare_samples = 60;

CommandLine compare_line() {
  CommandLine line;
  line.name = "compare";
  line.summary = "what to order: retarder, hours, hands and shade tried in turn";
  line.operand = "JOB";
  line.options = job_options();
  line.options.push_back(samples_option(compare_samples));
  line.options.push_back(write_option("the comparison", endings_of(compare_formats())));
  line.options.push_back(force_option());
  return line;
}

/// Computes it all, telling how far it is.
struct Compared {
  Comparison comparison;
  TurningPoint turning;
  Advice advice;
};

Compared compare(const PlannedJob& planned, std::size_t samples, std::ostream& err) {
  const LoadedJob& loaded = planned.loaded;
  std::optional<Ensemble> ensemble;
  if (samples > 0) ensemble = sampled_days(planned, {samples, 0, {}});
  Progress progress("days computed", err);
  const CompareSettings settings{0, [&progress](std::size_t done) { progress.tell(done); }};
  const CompareCase compared{loaded.job,
                             loaded.forecast,
                             loaded.series,
                             loaded.practice,
                             loaded.forecast_age_h,
                             planned.run,
                             planned.plan,
                             ensemble ? &*ensemble : nullptr};
  Compared result;
  result.comparison = compare_choices(compared, settings);
  result.turning = find_turning_point(compared, result.comparison, settings);
  result.advice = advise(loaded.job, result.comparison, result.turning, loaded.practice.compare);
  return result;
}

int run_compare(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::vector<std::string> files = line.texts("write");
  const auto guard = guard_files("compare", line, files, endings_of(compare_formats()), err);
  if (!guard) return exit_input_wrong;
  const auto samples = samples_asked(line, compare_samples, err);
  if (!samples) return exit_input_wrong;
  const JobPlanning planning = plan_job(line, err);
  if (!planning.planned) return planning.exit_code;
  const PlannedPour plan = planning.planned->facts();
  const Compared compared = compare(*planning.planned, *samples, err);
  const CompareFacts facts{plan, compared.comparison, compared.turning, compared.advice};
  const int code =
      write_reports(files, compare_formats(), facts, planning.planned->loaded.now, *guard, err);
  if (code != exit_done) return code;
  out << text_compare(facts, style_for(out));
  return exit_done;
}

}  // namespace

const Command compare_command{compare_line, run_compare};

}  // namespace slabtide
