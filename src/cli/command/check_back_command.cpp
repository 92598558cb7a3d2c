#include "check_back_command.h"

#include <ostream>

#include <fmt/format.h>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "core/utf8.h"
#include "request/plan/finished_pour.h"
#include "slabtide/report/text/text_check_back.h"

namespace slabtide {

namespace {

CommandLine check_back_line() {
  CommandLine line;
  line.name = "check-back";
  line.summary = "after the pour: what was noted, against what was planned";
  line.operand = "JOB";
  line.options = job_options();
  add_write_options(line, "what was seen", endings_of(check_back_formats()));
  return line;
}

int run_check_back(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto reports = asked_reports("check-back", line, check_back_formats(), err);
  if (!reports) return exit_input_wrong;
  const auto pour = plan_job(line, err);
  if (!pour) return exit_input_wrong;
  if (pour->journal.readings.empty()) {
    const std::string& path = line.operands().front();
    err << fmt::format("slabtide check-back: nothing was noted in {}\n  slabtide note {} ...\n",
                       printable(journal_path(path)), printable(path));
    return exit_input_wrong;
  }
  const std::vector<CheckedObservation> checked = checked_by_hour(*pour);
  const CheckBackFacts facts{*pour, pour->journal, checked};
  if (const int code = reports->write(facts, pour->now, err); code != exit_done) return code;
  out << text_check_back(facts, style_for(out));
  return exit_done;
}

}  // namespace

const Command check_back_command{check_back_line, run_check_back};

}  // namespace slabtide
