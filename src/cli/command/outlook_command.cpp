#include "outlook_command.h"

#include <ostream>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "slabtide/day/plan/outlook.h"
#include "slabtide/report/text/text_outlook.h"

namespace slabtide {

namespace {

CommandLine outlook_line() {
  CommandLine line;
  line.name = "outlook";
  line.summary = "the pour day's weather by the hour, and whether to pour";
  line.operand = "JOB";
  line.options = job_options();
  add_write_options(line, "the outlook", endings_of(outlook_formats()));
  return line;
}

int run_outlook(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto reports = asked_reports("outlook", line, outlook_formats(), err);
  if (!reports) return exit_input_wrong;
  const auto pour = plan_job(line, err);
  if (!pour) return exit_input_wrong;
  const Outlook outlook = look_ahead(*pour);
  const OutlookFacts facts{*pour, outlook};
  if (const int code = reports->write(facts, pour->now, err); code != exit_done) return code;
  out << text_outlook(*pour, outlook, style_for(out));
  return exit_done;
}

}  // namespace

const Command outlook_command{outlook_line, run_outlook};

}  // namespace slabtide
