#include "saw_command.h"

#include <ostream>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
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
  const auto pour = plan_job_with_bands(line, err);
  if (!pour) return exit_input_wrong;
  out << text_saw(*pour, style_for(out));
  return exit_done;
}

}  // namespace

const Command saw_command{saw_line, run_saw};

}  // namespace slabtide
