#include "slabtide/cli/check_back_command.h"

#include <ostream>

#include <fmt/format.h>

#include "slabtide/cli/output.h"
#include "slabtide/cli/planned_job.h"
#include "slabtide/day/check_back.h"
#include "slabtide/report/text_check_back.h"

namespace slabtide {

namespace {

CommandLine check_back_line() {
  CommandLine line;
  line.name = "check-back";
  line.summary = "after the pour: what was noted beside what was planned";
  line.operand = "JOB";
  line.options = job_options();
  return line;
}

int run_check_back(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const JobPlanning planning = plan_job(line, err);
  if (!planning.planned) return planning.exit_code;
  const PlannedJob& planned = *planning.planned;
  const LoadedJob& loaded = planned.loaded;
  if (loaded.journal.readings.empty()) {
    err << fmt::format("slabtide check-back: nothing was noted in {}\n  slabtide note {} ...\n",
                       journal_path(loaded.path), loaded.path);
    return exit_input_wrong;
  }
  const auto checked =
      check_back(loaded.journal, loaded.job, planned.run, planned.plan, loaded.practice);
  out << text_check_back(planned.facts(), loaded.journal, checked, style_for(out));
  return exit_done;
}

}  // namespace

const Command check_back_command{check_back_line, run_check_back};

}  // namespace slabtide
