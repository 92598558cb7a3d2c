#include "candidate_days.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "day/pour/pour_span.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

/// What keeps a start from being tried; the day is told the first of these that any start has.
enum class Hindrance { none, forecast_ends, forecast_starts, gone_by };

class Candidates {
 public:
  Candidates(const DaysCase& asked, const WeatherSeries& series) : asked_(asked), series_(series) {}

  CandidateDay on(Date date) const {
    CandidateDay day{date, {}, {}};
    Hindrance hindrance = Hindrance::gone_by;
    for (const UtcTime start : starts_on(date)) {
      const Hindrance own = hindrance_of(start);
      if (own == Hindrance::none) day.starts.push_back(start);
      hindrance = std::min(hindrance, own);
    }
    if (day.starts.empty()) day.why_none = words(hindrance);
    return day;
  }

 private:
  /// Full hours of the local clock, and the job's own hour.
  std::vector<UtcTime> starts_on(Date date) const {
    const TimeZone& zone = asked_.job.site.time_zone;
    const CompareRules& rules = asked_.practice.compare;
    std::vector<UtcTime> starts{
        zone.utc_from_local(
                LocalTime(date, zone.local_from_utc(asked_.job.pour.start).time_of_day()))
            .utc};
    const auto last = static_cast<int>(std::floor(rules.latest_start_h));
    for (auto hour = static_cast<int>(std::ceil(rules.earliest_start_h)); hour <= last; ++hour) {
      starts.push_back(zone.utc_from_local(LocalTime(date, boost::posix_time::hours(hour))).utc);
    }
    std::sort(starts.begin(), starts.end());
    starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
    return starts;
  }

  Hindrance hindrance_of(UtcTime start) const {
    const DaysRules& rules = asked_.practice.days;
    const UtcTime batched = after_seconds(start, -asked_.job.pour.transit_min * seconds_per_minute);
    if (call_off_by(batched, rules) < asked_.now) return Hindrance::gone_by;
    if (batched < series_.first()) return Hindrance::forecast_starts;
    const UtcTime needed = after_seconds(start, rules.reach_h * seconds_per_hour);
    return series_.last() < needed ? Hindrance::forecast_ends : Hindrance::none;
  }

  std::string words(Hindrance hindrance) const {
    const Clock clock = clock_of(asked_.job);
    switch (hindrance) {
      case Hindrance::forecast_ends:
        return fmt::format("the forecast ends {}, before the night after it is over",
                           clock.weekday_time(series_.last()));
      case Hindrance::forecast_starts:
        return fmt::format("the forecast starts only {}", clock.weekday_time(series_.first()));
      case Hindrance::gone_by:
      case Hindrance::none:
        break;
    }
    return "too late to order for it";
  }

  const DaysCase& asked_;
  const WeatherSeries& series_;
};

}  // namespace

std::vector<CandidateDay> candidate_days(const DaysCase& asked, const WeatherSeries& series) {
  const TimeZone& zone = asked.job.site.time_zone;
  const Date first =
      std::max(zone.local_from_utc(series.first()).date(), zone.local_from_utc(asked.now).date());
  const Date last = std::min(zone.local_from_utc(series.last()).date(),
                             first + boost::gregorian::days(max_days_ahead - 1));
  const Candidates candidates(asked, series);
  std::vector<CandidateDay> days;
  for (Date date = first; date <= last; date += boost::gregorian::days(1)) {
    days.push_back(candidates.on(date));
  }
  return days;
}

Diagnostic no_day_fault(const DaysCase& asked, const WeatherSeries& series) {
  const Clock clock = clock_of(asked.job);
  Diagnostic fault;
  fault.key = "weather";
  fault.next_step = "get a new forecast: slabtide fetch gets the site's for more than a week";
  if (series.last() <= asked.now) {
    fault.message = fmt::format("every day of the forecast is past: it ends {}, and it is {} now",
                                clock.date_time(series.last()), clock.date_time(asked.now));
    return fault;
  }
  fault.message = fmt::format(
      "the forecast leaves no day to choose: it runs from {} to {}, and a day needs it from its "
      "first batch to {:g} h after its start",
      clock.date_time(series.first()), clock.date_time(series.last()), asked.practice.days.reach_h);
  return fault;
}

}  // namespace slabtide
