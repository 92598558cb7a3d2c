#include "crew_command.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <ostream>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "cli/jobs/text_files.h"
#include "core/text.h"
#include "core/utf8.h"
#include "report/files/calendar_crew.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/report/text/text_crew.h"
#include "slabtide/report/text/text_shared_crew.h"
#include "slabtide/request/plan/plan_request.h"

namespace slabtide {

namespace {

constexpr std::size_t max_sites = 8;  // of one crew's day (ours)
constexpr int max_travel_min = 480;   // a working day (ours)
constexpr std::string_view calendar_ending = ".ics";

CommandLine crew_line() {
  CommandLine line;
  line.name = "crew";
  line.summary = "who does what, when: each finisher's day, and what to bring";
  line.operand = "JOB...";
  line.max_operands = max_sites;
  line.options = job_options();
  line.options.push_back(samples_option());
  add_write_options(line, "who is where when", {calendar_ending});
  line.options.push_back(
      {"for", "NAME", "only one crew member's day, to send as a message", false});
  line.options.push_back(
      {"travel", "MIN",
       fmt::format("drive from one site to another, with several jobs; else {} min",
                   usual_travel_min),
       false});
  line.details =
      "With several jobs, the crew of the first works all of the sites, each hand on\n"
      "one at a time. Their dates may be a day apart.\n";
  return line;
}

/// The whole minutes that --travel gives; empty if it gives something else.
std::optional<int> travel_of(const ParsedLine& line) {
  const auto text = line.text("travel");
  if (!text) return usual_travel_min;
  const auto number = parse_number(*text);
  if (!number || *number < 0.0 || *number > max_travel_min || std::floor(*number) != *number) {
    return std::nullopt;
  }
  return static_cast<int>(*number);
}

/// Why these pours cannot share a crew; empty if they can.
std::string apart_fault(const std::vector<PlannedPour>& pours,
                        const std::vector<std::string>& paths) {
  const Job& first = pours.front().job;
  for (std::size_t i = 1; i < pours.size(); ++i) {
    const Job& job = pours[i].job;
    if (std::abs((job.pour.date - first.pour.date).days()) <= max_days_shared) continue;
    return fmt::format("{} pours on {}, {} on {}: a crew is shared on one day or two in a row",
                       printable(paths[i]), clock_of(job).date(job.pour.start),
                       printable(paths.front()), clock_of(first).date(first.pour.start));
  }
  return {};
}

std::optional<WriteGuard> calendar_guard(const ParsedLine& line, std::ostream& err) {
  return guard_files("crew", line, line.texts("write"), {calendar_ending}, err);
}

/// `make` makes a calendar of a CalendarIssue. Returns the exit code.
template <class Make>
int write_calendars(const ParsedLine& line, UtcTime now, const WriteGuard& guard, std::ostream& err,
                    const Make& make) {
  std::vector<MadeFile> made;
  for (const std::string& path : line.texts("write")) {
    const std::string before = text_before(path);
    made.push_back(
        {path, make(CalendarIssue{now, before, {.finisher = line.text("for").value_or("")}})});
  }
  return write_files(made, guard, err);
}

int run_sites(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::vector<std::string>& paths = line.operands();
  const auto travel_min = travel_of(line);
  if (!travel_min) {
    err << refusal("crew", fmt::format("--travel: got '{}', expected whole minutes from 0 to {}",
                                       printable(*line.text("travel")), max_travel_min));
    return exit_input_wrong;
  }
  const auto guard = calendar_guard(line, err);
  if (!guard) return exit_input_wrong;
  std::vector<PlannedPour> pours;
  for (const std::string& path : paths) {
    auto pour = plan_request(request_of(line, path), text_files(), err);
    if (!pour) return exit_input_wrong;
    pours.push_back(std::move(*pour));
  }
  if (const std::string fault = apart_fault(pours, paths); !fault.empty()) {
    err << refusal("crew", fault);
    return exit_input_wrong;
  }
  const SharedCrew shared = share_crew(pours, *travel_min);
  const std::string name = line.text("for").value_or("");
  if (const std::string fault = finisher_fault(shared.crew, name); !fault.empty()) {
    err << refusal("crew", fault);
    return exit_input_wrong;
  }
  const int code = write_calendars(
      line, pours.front().now, *guard, err,
      [&](const CalendarIssue& issue) { return crew_calendar(shared, pours, issue); });
  if (code != exit_done) return code;
  out << (name.empty() ? text_shared_crew(shared, pours, style_for(out))
                       : text_shared_hand(shared, pours, name, style_for(out)));
  return exit_done;
}

int run_crew(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  if (line.operands().size() > 1) return run_sites(line, out, err);
  const auto guard = calendar_guard(line, err);
  if (!guard) return exit_input_wrong;
  const auto pour = plan_job_with_bands(line, err);
  if (!pour) return exit_input_wrong;
  const std::string name = line.text("for").value_or("");
  if (const std::string fault = finisher_fault(pour->plan.crew, name); !fault.empty()) {
    err << refusal("crew", fault);
    return exit_input_wrong;
  }
  const int code = write_calendars(line, pour->now, *guard, err, [&](const CalendarIssue& issue) {
    return crew_calendar(*pour, issue);
  });
  if (code != exit_done) return code;
  out << (name.empty() ? text_crew(*pour, style_for(out)) : text_hand(*pour, name, style_for(out)));
  return exit_done;
}

}  // namespace

const Command crew_command{crew_line, run_crew};

}  // namespace slabtide
