#include "plan_command.h"

#include <ostream>

#include "cli/jobs/job_line.h"
#include "cli/jobs/many_jobs.h"
#include "cli/jobs/output.h"
#include "report/files/calendar_events.h"
#include "slabtide/report/text/text_plan.h"

namespace slabtide {

namespace {

constexpr std::size_t max_planned_jobs = 10000;
/// Without --draws, days are sampled only for up to this many jobs; for more it would take most of
/// the time.
constexpr std::size_t max_jobs_with_samples = 20;

CommandLine plan_line() {
  CommandLine line;
  line.name = "plan";
  line.summary = "the day of a pour: when each zone takes which work";
  line.operand = "JOB...";
  line.max_operands = max_planned_jobs;
  line.options = job_options();
  line.options.push_back(samples_option());
  add_write_options(line, "the plan", endings_of(plan_formats()));
  line.options.push_back({"detail", "",
                          "put every window, cut and arrival in a calendar, not just the finishes",
                          false});
  line.options.push_back(
      {"for", "NAME", "put one crew member's day in a calendar, such as \"finisher 1\"", false});
  line.details =
      "With several jobs, one that cannot be planned does not stop the rest. An ending\n"
      "alone, as in --write .html, writes beside the job: pad.html for pad.toml. For\n"
      "more than 20 jobs no possible days are tried unless --draws says so.\n";
  return line;
}

/// One job with its files, and how to plan it.
struct PlanWork {
  const ParsedLine& line;
  std::size_t samples = 0;
  int threads = 0;  ///< per job; 0: as many as the machine has
  TextStyle style;
  const WriteGuard& guard;
};

int plan_one(const std::string& path, const std::vector<std::string>& files, const PlanWork& work,
             std::ostream& out, std::ostream& err) {
  const auto pour = plan_job_with_bands(path, work.line, work.samples, work.threads, err);
  if (!pour) return exit_input_wrong;
  const CalendarScope calendar{work.line.has("detail"), work.line.text("for").value_or("")};
  if (const std::string fault = finisher_fault(pour->plan.crew, calendar.finisher);
      !fault.empty()) {
    err << refusal("plan", fault);
    return exit_input_wrong;
  }
  const int code =
      write_reports(files, plan_formats(), *pour, pour->now, work.guard, err, calendar);
  if (code != exit_done) return code;
  out << text_plan(*pour, work.style);
  return exit_done;
}

int run_plan(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::vector<std::string>& paths = line.operands();
  const WriteTargets targets = write_targets(line.texts("write"), paths);
  if (!targets.fault.empty()) {
    err << refusal("plan", targets.fault);
    return exit_input_wrong;
  }
  const auto guard = guard_files("plan", line, targets.all(), endings_of(plan_formats()), err);
  if (!guard) return exit_input_wrong;
  const std::size_t usual = paths.size() > max_jobs_with_samples ? 0 : usual_samples;
  const auto samples = samples_asked(line, usual, err);
  if (!samples) return exit_input_wrong;
  PlanWork work{line, *samples, 0, style_for(out), *guard};
  if (paths.size() == 1) return plan_one(paths.front(), targets.of_job.front(), work, out, err);
  work.threads = 1;  // one thread each, since the jobs run in parallel
  const JobWork planned = [&](std::size_t job, std::ostream& job_out, std::ostream& job_err) {
    return plan_one(paths[job], targets.of_job[job], work, job_out, job_err);
  };
  return for_each_job(paths, planned, out, err);
}

}  // namespace

const Command plan_command{plan_line, run_plan};

}  // namespace slabtide
