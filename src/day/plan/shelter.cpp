#include "shelter.h"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "caution_watch.h"
#include "job/model/wording.h"

namespace slabtide {

namespace {

/// The highest of the weather's values while the zone is placed and sets.
double max_while_fresh(const ZonePlan& zone, const PourRun& run,
                       const std::vector<double>& values) {
  const Steps steps =
      steps_between(run.weather.grid, zone.placed.start,
                    std::max(zone.placed.end, zone.whole.initial_set.value_or(zone.placed.end)));
  const std::size_t first = std::min(steps.first, values.size() - 1);
  const std::size_t end = std::clamp(steps.end, first + 1, values.size());
  return *std::max_element(values.begin() + static_cast<std::ptrdiff_t>(first),
                           values.begin() + static_cast<std::ptrdiff_t>(end));
}

double max_wind_slab_m_s(const ZonePlan& zone, const PourRun& run) {
  return max_while_fresh(zone, run, run.weather.wind_slab_m_s);
}

double max_air_c(const ZonePlan& zone, const PourRun& run) {
  return max_while_fresh(zone, run, run.weather.air_c);
}

}  // namespace

std::string why_no_shade(const ZonePlan& zone, const PourRun& run, const ShelterRules& rules,
                         UnitSystem units) {
  if (zone.whole.sunlit_fraction <= 0.0) return "it is in the shade already";
  if (zone.area_m2 > rules.shade_max_m2) {
    return fmt::format("nobody puts up shade over more than {}",
                       area_words(rules.shade_max_m2, units));
  }
  const double wind_m_s = max_wind_slab_m_s(zone, run) / run.weather.wind_ratio;
  if (wind_m_s > rules.shade_max_wind_m_s) {
    return fmt::format("it would not stand in wind up to {}", wind_words(wind_m_s, units));
  }
  if (max_air_c(zone, run) < rules.shade_min_air_c) {
    return fmt::format("under {} a slab wants the sun",
                       temperature_words(rules.shade_min_air_c, units));
  }
  return {};
}

bool windbreak_makes_sense(const ZonePlan& zone, const PourRun& run, const ShelterRules& rules) {
  return max_wind_slab_m_s(zone, run) >= rules.windbreak_min_wind_m_s;
}

bool fog_makes_sense(const ZonePlan& zone, const PourRun& run, const WeatherLimits& limits) {
  return max_air_c(zone, run) > limits.cold_air_c;
}

std::string drying_shelter_words(const ZonePlan& zone, const PourRun& run, const Practice& practice,
                                 UnitSystem units) {
  std::string words;
  const auto add = [&words](bool makes_sense, const char* what) {
    if (makes_sense) words += fmt::format("{}{}", words.empty() ? "" : ", ", what);
  };
  add(windbreak_makes_sense(zone, run, practice.shelter), "windbreak");
  add(why_no_shade(zone, run, practice.shelter, units).empty(), "shade");
  add(fog_makes_sense(zone, run, practice.limits), "fog");
  return words + (words.empty() ? "an evaporation film" : " or an evaporation film");
}

}  // namespace slabtide
