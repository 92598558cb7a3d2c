#include "order_command.h"

#include <ostream>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "report/text/text_plant_order.h"

namespace slabtide {

namespace {

CommandLine order_line() {
  CommandLine line;
  line.name = "order";
  line.summary = "the order as the plant hears it, to read out or send as a message";
  line.operand = "JOB";
  line.options = job_options();
  return line;
}

int run_order(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto pour = plan_job(line, err);
  if (!pour) return exit_input_wrong;
  out << text_plant_order(*pour);
  return exit_done;
}

}  // namespace

const Command order_command{order_line, run_order};

}  // namespace slabtide
