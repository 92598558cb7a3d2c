#include "day_axis.h"

#include <algorithm>

#include <fmt/format.h>

#include "report/markup/page_parts.h"
#include "report/markup/svg.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "weather/sky/nights.h"

namespace slabtide {

namespace {

/// Anything over a day after the start is given as a time but not drawn (ours).
constexpr double max_hours = 24.0;
/// From this many hours on, only every second hour is named (ours: on paper they would touch).
constexpr double crowded_hours = 15.0;

/// The local full hour at or before the time, whatever the zone's offset.
UtcTime hour_before(UtcTime time, const TimeZone& zone) {
  const auto into = zone.local_from_utc(time).time_of_day();
  return time - boost::posix_time::seconds(into.total_seconds() % 3600);
}

UtcTime earliest(const PlannedPour& facts) {
  UtcTime first = facts.run.order.first_placed();
  for (const Load& load : facts.run.order.loads) first = std::min(first, load.batched);
  for (const CrewMember& member : facts.plan.crew.people) {
    if (!member.visits.empty()) first = std::min(first, member.visits.front().arrives);
  }
  return first;
}

UtcTime latest(const PlannedPour& facts) {
  UtcTime last = facts.run.order.first_placed();
  const auto reach = [&last](const std::optional<UtcTime>& time) {
    if (time) last = std::max(last, *time);
  };
  for (const ShownPart& part : all_parts(facts)) {
    for (const Operation operation : operations_of(part.finish)) {
      const ShownWindow shown = window_of(part, operation);
      if (shown.window != nullptr) reach(shown.window->closes);
    }
    reach(part.plan->final_set);
  }
  for (const ZonePlan& zone : facts.plan.zones) {
    for (const SawPlan& saw : zone.saws) {
      if (saw.on_hand || facts.job.pour.saws.empty()) reach(saw.latest);
    }
  }
  return last;
}

/// "8 AM", "08:00"; at midnight the name of the day that begins.
std::string mark_words(UtcTime time, const Clock& clock) {
  const bool midnight = clock.zone.local_from_utc(time).time_of_day().hours() == 0;
  return midnight ? shown_weekday(clock.day(time)) : clock.hour(time);
}

}  // namespace

double DayAxis::percent(UtcTime time) const {
  constexpr double all = 100.0;
  const double along = seconds_between(from, time) / seconds_between(from, to);
  return all * std::clamp(along, 0.0, 1.0);
}

std::string DayAxis::fraction(UtcTime time) const { return short_number(percent(time), 2) + "%"; }

DayAxis day_axis(const PlannedPour& facts) {
  const TimeZone& zone = facts.job.site.time_zone;
  DayAxis axis;
  axis.from = hour_before(earliest(facts), zone);
  const UtcTime end = hour_before(after_seconds(latest(facts), seconds_per_hour - 1.0), zone);
  const UtcTime furthest = after_seconds(axis.from, max_hours * seconds_per_hour);
  axis.to = std::clamp(end, after_seconds(axis.from, seconds_per_hour), furthest);
  return axis;
}

std::vector<HourMark> hour_marks(const DayAxis& axis, const Job& job) {
  const double hours = seconds_between(axis.from, axis.to) / seconds_per_hour;
  const double step_s = hours > crowded_hours ? 2.0 * seconds_per_hour : seconds_per_hour;
  std::vector<HourMark> marks;
  for (UtcTime at = axis.from; at <= axis.to; at = after_seconds(at, step_s)) {
    marks.push_back({at, mark_words(at, clock_of(job))});
  }
  return marks;
}

std::vector<Night> nights(const DayAxis& axis, const PlannedPour& facts) {
  std::vector<Night> dark;
  for (const TimeSpan& night : nights_between(axis.from, axis.to, facts.job.site)) {
    dark.push_back({night.from, night.to});
  }
  return dark;
}

}  // namespace slabtide
