#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// The pour day's weather in figures.
struct WeatherSummary {
  double high_c = 0.0;
  double low_c = 0.0;
  double mean_wind_10m_m_s = 0.0;
  double daylight_cloud_fraction = 0.0;
};

/// Over what the run covers of the 24 hours from the start of the pour, which is when the
/// concrete meets it.
WeatherSummary summarise_weather(const PourRun& run);

/// "Fri 06:10" for another day than the pour's, "06:10" for the day itself.
std::string day_clock(UtcTime time, const Job& job);
/// The same, or "-" where there is no time.
std::string day_clock(const std::optional<UtcTime>& time, const Job& job);

/// "Weather (hourly table, issued Wed 16:00, 14 h old): high ..., low ..., wind ..., cloud ..."
std::string weather_words(const PlannedPour& facts);

/// The mix in a sentence, and where its set times come from.
std::string mix_words(const PlannedPour& facts);
std::string set_words(const SettingParameters& setting, UnitSystem units);
/// "fairly", as in "fairly sure".
std::string_view sure_words(SureWord word);
/// Why one is hardly sure where `Sureness::either_way_min` is absent.
inline constexpr std::string_view past_end_words =
    "on one day in ten or more the main work opens after the plan's end";
/// Of the causes of doubt those worth telling: three at most.
std::vector<DoubtCause> told_causes(const Sureness& sureness);
std::string finish_words(Finish finish);
std::string saw_words(SawKind kind);
std::string compass_words(double bearing_deg);

}  // namespace slabtide
