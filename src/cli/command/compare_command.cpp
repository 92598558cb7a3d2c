#include "compare_command.h"

#include <ostream>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "cli/line/progress.h"
#include "request/plan/compared_pour.h"
#include "slabtide/report/text/text_compare.h"

namespace slabtide {

namespace {

CommandLine compare_line() {
  CommandLine line;
  line.name = "compare";
  line.summary = "what to order: retarder, hours, hands and covers in turn";
  line.operand = "JOB";
  line.options = job_options();
  line.options.push_back(samples_option());
  add_write_options(line, "the comparison", endings_of(compare_formats()));
  return line;
}

ComparedPour compared_shown(const PlannedPour& pour, std::size_t samples, std::ostream& err) {
  Progress progress("days computed", err);
  return compare_pour(pour, samples, 0, [&progress](std::size_t done) { progress.tell(done); });
}

int run_compare(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto reports = asked_reports("compare", line, compare_formats(), err);
  if (!reports) return exit_input_wrong;
  const auto samples = samples_asked(line, usual_samples, err);
  if (!samples) return exit_input_wrong;
  const auto pour = plan_job(line, err);
  if (!pour) return exit_input_wrong;
  const ComparedPour compared =
      compared_shown(*pour, line.text("draws") ? *samples : samples_for(pour->plan, *samples), err);
  const CompareFacts facts{*pour, compared.comparison, compared.turning, compared.advice};
  if (const int code = reports->write(facts, pour->now, err); code != exit_done) return code;
  out << text_compare(facts, style_for(out));
  return exit_done;
}

}  // namespace

const Command compare_command{compare_line, run_compare};

}  // namespace slabtide
