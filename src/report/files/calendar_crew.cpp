#include "calendar_crew.h"

#include <fmt/format.h>

#include "report/text/crew_lines.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

std::string work_lines(const SharedCrew& shared, std::size_t who, const CrewVisit& visit) {
  std::string text;
  for (const DayLine& line : lines_of(shared.crew, visit, who, shared.job)) {
    text += fmt::format("{}{} {}", text.empty() ? "" : "\n", line.span, line.words);
  }
  return text;
}

}  // namespace

std::string crew_calendar(const SharedCrew& shared, std::span<const PlannedPour> pours,
                          const CalendarIssue& issue) {
  const std::string& only = issue.scope.finisher;
  CalendarContent content;
  content.id = "crew";
  for (const PlannedPour& pour : pours) content.id += "\x1f" + calendar_id(pour.job);
  content.name = fmt::format("{}, {}", only.empty() ? "Crew" : only,
                             clock_of(shared.job).date(shared.job.pour.start));
  for (std::size_t who = 0; who < shared.crew.people.size(); ++who) {
    const CrewMember& member = shared.crew.people[who];
    if (!only.empty() && member.name != only) continue;
    for (std::size_t i = 0; i < member.visits.size(); ++i) {
      const CrewVisit& visit = member.visits[i];
      const std::string& site = shared.sites[visit.site].name;
      content.events.push_back(
          {{.id = fmt::format("stay\x1f{}\x1f{}", member.name, i),
            .category = "crew",
            .summary = only.empty() ? fmt::format("{}: {}", member.name, site) : site,
            .description = work_lines(shared, who, visit),
            .starts = visit.arrives,
            .ends = visit.leaves,
            .alarm_before_min = before_arrival_min},
           &pours[visit.site].job.site});
    }
  }
  return calendar(content, issue);
}

std::string crew_calendar(const PlannedPour& pour, const CalendarIssue& issue) {
  SharedCrew alone{pour.job, {}, pour.plan.crew};
  alone.sites.push_back({.name = pour.job.name});
  return crew_calendar(alone, std::span(&pour, 1), issue);
}

}  // namespace slabtide
