#include "days_command.h"

#include <ostream>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "cli/jobs/text_files.h"
#include "cli/line/progress.h"
#include "slabtide/report/text/text_days.h"
#include "slabtide/request/plan/days_request.h"

namespace slabtide {

namespace {

CommandLine days_line() {
  CommandLine line;
  line.name = "days";
  line.summary = "which day to pour: every day of a forecast, its best hour and risks";
  line.operand = "JOB";
  line.options = job_options();
  line.options.push_back(samples_option(usual_days_samples));
  add_write_options(line, "the days", endings_of(days_formats()));
  line.details =
      "The date and start of the job are only a wish: of equal days the one nearest to\n"
      "it is taken. Each day needs the forecast from its first batch to a day after its\n"
      "start.\n";
  return line;
}

int run_days(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto reports = asked_reports("days", line, days_formats(), err);
  if (!reports) return exit_input_wrong;
  const auto samples = samples_asked(line, usual_days_samples, err);
  if (!samples) return exit_input_wrong;
  Progress progress("starts computed", err);
  const DaysSettings settings{*samples, !line.text("draws"), 0,
                              [&progress](std::size_t done) { progress.tell(done); }};
  const auto days =
      days_request(request_of(line, line.operands().front()), text_files(), err, settings);
  if (!days) return exit_input_wrong;
  if (const int code = reports->write(*days, days->now, err); code != exit_done) return code;
  out << text_days(*days, style_for(out));
  return exit_done;
}

}  // namespace

const Command days_command{days_line, run_days};

}  // namespace slabtide
