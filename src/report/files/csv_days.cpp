#include "csv_days.h"

#include <cmath>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>

#include "csv_text.h"
#include "report/words/decimals.h"
#include "report/words/verdict_sign.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// What every table of days begins with, in all its versions.
constexpr std::string_view days_heading_start = "\uFEFFdate,choose,verdict,";

class DaysTable {
 public:
  explicit DaysTable(const PlannedDays& facts) : facts_(facts) {}

  std::string text() const {
    const std::string degrees = is_us() ? "f" : "c";
    std::string text = std::string(days_heading_start) +
                       csv_record({"reasons", "start_local", "call_off_local", "start",
                                   "call_off_by", "finishers", "smallest_crew", "minutes_late",
                                   "high_" + degrees, "low_" + degrees, "rain_before_set_percent",
                                   is_us() ? "rain_before_set_in" : "rain_before_set_mm",
                                   "frost_local", "frost_percent", "finish_lost_percent"});
    for (std::size_t i = 0; i < facts_.days.days.size(); ++i) {
      text += row(facts_.days.days[i], i == facts_.days.best);
    }
    return text;
  }

 private:
  bool is_us() const { return facts_.job.units == UnitSystem::us; }

  std::string local(UtcTime at) const { return csv_local(at, facts_.job.site.time_zone); }
  std::string instant(UtcTime at) const { return iso8601_minute(at, facts_.job.site.time_zone); }

  std::string temperature(double c) const {
    return fixed_words(is_us() ? fahrenheit_from_celsius(c) : c, 1);
  }

  std::string amount(double mm) const {
    constexpr double mm_per_m = 1000.0;
    return is_us() ? fixed_words(in_from_m(mm / mm_per_m), 2) : fixed_words(mm, 1);
  }

  std::string row(const ForecastDay& day, bool best) const {
    const auto percent = [](double fraction) { return fixed_words(percent_per_one * fraction); };
    return csv_record(
        {boost::gregorian::to_iso_extended_string(day.date), best ? "yes" : "",
         std::string(verdict_id(day.judged.verdict)), csv_safe(reasons_words(day.judged)),
         local(day.start), local(day.call_off_by), instant(day.start), instant(day.call_off_by),
         fmt::format("{}", day.finishers),
         day.smallest_crew ? fmt::format("{}", *day.smallest_crew) : std::string(),
         fixed_words(day.late_min), temperature(day.weather.high_c), temperature(day.weather.low_c),
         percent(day.rain_before_set.chance), amount(day.rain_before_set.amount_mm),
         day.frost.at ? local(*day.frost.at) : std::string(),
         day.frost_fraction ? percent(*day.frost_fraction) : std::string(),
         day.finish_lost_fraction ? percent(*day.finish_lost_fraction) : std::string()});
  }

  const PlannedDays& facts_;
};

}  // namespace

std::string csv_days(const PlannedDays& facts) { return DaysTable(facts).text(); }

bool is_csv_days(std::string_view text) { return text.starts_with(days_heading_start); }

}  // namespace slabtide
