#include "slabtide/cli/command/saw_command.h"

#include <ostream>

#include "slabtide/cli/request/output.h"
#include "slabtide/cli/request/planned_job.h"
#include "slabtide/report/text/text_saw.h"

namespace slabtide {

namespace {

CommandLine saw_line() {
  CommandLine line;
  line.name = "saw";
  line.summary = "the joints, and the cuts in working order for tonight and the morning";
  line.operand = "JOB";
  line.options = job_options();
  line.options.push_back(samples_option());
  return line;
}

int run_saw(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const JobPlanning planning = plan_job_with_bands(line, err);
  if (!planning.planned) return planning.exit_code;
  out << text_saw(planning.planned->facts(), style_for(out));
  return exit_done;
}

}  // namespace

const Command saw_command{saw_line, run_saw};

}  // namespace slabtide
