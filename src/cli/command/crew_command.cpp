#include "crew_command.h"

#include <ostream>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "slabtide/report/text/text_crew.h"

namespace slabtide {

namespace {

CommandLine crew_line() {
  CommandLine line;
  line.name = "crew";
  line.summary = "who does what, when: each finisher's day, and what to take along";
  line.operand = "JOB";
  line.options = job_options();
  line.options.push_back(samples_option());
  return line;
}

int run_crew(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto pour = plan_job_with_bands(line, err);
  if (!pour) return exit_input_wrong;
  out << text_crew(*pour, style_for(out));
  return exit_done;
}

}  // namespace

const Command crew_command{crew_line, run_crew};

}  // namespace slabtide
