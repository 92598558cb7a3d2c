#include "slabtide/cli/plan_command.h"

#include <ostream>

#include "slabtide/cli/output.h"
#include "slabtide/cli/planned_job.h"
#include "slabtide/report/text_plan.h"

namespace slabtide {

namespace {

CommandLine plan_line() {
  CommandLine line;
  line.name = "plan";
  line.summary = "the day of a pour: when each zone takes which work";
  line.operand = "JOB";
  line.options = job_options();
  line.options.push_back(draws_option());
  line.options.push_back(write_option("the plan", endings_of(plan_formats())));
  return line;
}

int run_plan(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::vector<std::string> files = line.texts("write");
  if (const std::string fault = ending_fault(files, endings_of(plan_formats())); !fault.empty()) {
    err << "slabtide plan: " << fault << "\n";
    return exit_input_wrong;
  }
  const JobPlanning planning = plan_job_with_bands(line, err);
  if (!planning.planned) return planning.exit_code;
  const PlanFacts facts = planning.planned->facts();
  const int code = write_reports(files, plan_formats(), facts, planning.planned->loaded.now, err);
  if (code != exit_done) return code;
  out << text_plan(facts, style_for(out));
  return exit_done;
}

}  // namespace

const Command plan_command{plan_line, run_plan};

}  // namespace slabtide
