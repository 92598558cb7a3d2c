#include "slabtide/cli/plan_command.h"

#include <ostream>

#include "slabtide/cli/load_job.h"
#include "slabtide/cli/output.h"
#include "slabtide/day/day_plan.h"
#include "slabtide/report/text_plan.h"

namespace slabtide {

namespace {

CommandLine plan_line() {
  CommandLine line;
  line.name = "plan";
  line.summary = "the day of a pour: when each zone takes which work";
  line.operand = "JOB";
  line.options = job_options();
  line.options.push_back({"write", "FILE", "write the plan to FILE.json as well", true});
  return line;
}

int run_plan(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::vector<std::string> files = line.texts("write");
  if (const std::string fault = write_fault(files); !fault.empty()) {
    err << "slabtide plan: " << fault << "\n";
    return exit_input_wrong;
  }
  const JobLoading loading = load_job(line.operands().front(), line, err);
  if (!loading.loaded) return loading.exit_code;
  const LoadedJob& loaded = *loading.loaded;
  const Reading<PourRun> run =
      run_pour(loaded.job, loaded.series, loaded.practice, SolverSettings{});
  err << render_all(run.diagnostics, loaded.path, loaded.text);
  if (!run.ok()) return exit_input_wrong;
  const DayPlan plan = plan_day(loaded.job, *run.value, loaded.practice);
  const PlanFacts facts{loaded.job, loaded.forecast, *run.value, plan};
  if (const int code = write_plan_files(files, facts, err); code != exit_done) return code;
  out << text_plan(facts, style_for(out));
  return exit_done;
}

}  // namespace

const Command plan_command{plan_line, run_plan};

}  // namespace slabtide
