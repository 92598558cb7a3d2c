#include "slabtide/day/plan/outlook.h"

#include <algorithm>
#include <cmath>

#include "slab/process/evaporation.h"
#include "slab/process/setting.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/weather/air/moist_air.h"

namespace slabtide {

namespace {

constexpr double hours_before = 2.0;
constexpr double hours_after_sunset = 2.0;
/// If the sun does not set, this long a working day is shown.
constexpr double hours_without_sunset = 14.0;

/// A place of the job that represents its sun or its shade.
struct Spot {
  const ColumnHistory* history = nullptr;
  const MixModel* mix = nullptr;
  double sunlit = 0.0;
};

double mean_sunlit(const CellExposure& exposure) {
  double sum = 0.0;
  for (const double fraction : exposure.sunlit_fraction) sum += fraction;
  return sum / static_cast<double>(exposure.sunlit_fraction.size());
}

/// The sunniest place or, with `shadiest`, the shadiest.
Spot find_spot(const PourRun& run, bool shadiest) {
  Spot found;
  for (const ZoneRun& zone : run.zones) {
    for (const CellRun& cell : zone.cells) {
      const double sunlit = mean_sunlit(run.exposures[cell.exposure]);
      const bool better = shadiest ? sunlit < found.sunlit : sunlit > found.sunlit;
      if (found.history != nullptr && !better) continue;
      found = {&run.histories[cell.history], &run.mixes[cell.mix], sunlit};
    }
  }
  return found;
}

/// The temperature of the concrete at the spot; until it is placed, as delivered.
double concrete_c(const Spot& spot, const std::vector<double>& at_depth_c, double at_s) {
  const bool placed = at_s >= spot.history->time_s.front();
  return placed ? value_at(spot.history->time_s, at_depth_c, at_s) : spot.mix->discharge_c;
}

double drying_kg_m2_h(const Spot& spot, const OutlookHour& hour, double at_s) {
  const double surface_c = concrete_c(spot, spot.history->surface_c, at_s);
  return menzel_evaporation_kg_m2_h(saturation_pressure_pa(surface_c),
                                    vapour_pressure_pa(hour.dew_point_c), hour.wind_slab_m_s);
}

double pace(const Spot& spot, double at_s) {
  return set_rate(concrete_c(spot, spot.history->middle_c, at_s),
                  spot.mix->setting.activation_energy_j_mol);
}

OutlookHour hour_at(const SiteWeather& weather, std::size_t k, const Spot& sunny, const Spot& shady,
                    const PourRun& run) {
  OutlookHour hour;
  hour.at = after_seconds(weather.grid.start, static_cast<double>(k) * weather.grid.step_s);
  hour.air_c = weather.air_c[k];
  hour.dew_point_c = weather.dew_point_c[k];
  hour.humidity_fraction = humidity_fraction(hour.air_c, hour.dew_point_c);
  hour.wind_slab_m_s = weather.wind_slab_m_s[k];
  hour.shortwave_w_m2 = weather.beam_horizontal_w_m2[k] + weather.diffuse_w_m2[k];
  hour.cloud_fraction = weather.cloud_fraction[k];
  hour.rain_chance = weather.rain_chance[k];
  hour.rain_mm_h = weather.rain_mm_h[k];
  hour.thunder = weather.thunder[k] != 0;
  const double at_s = seconds_between(run.weather.grid.start, hour.at);
  hour.evaporation_sun_kg_m2_h = drying_kg_m2_h(sunny, hour, at_s);
  hour.evaporation_shade_kg_m2_h = drying_kg_m2_h(shady, hour, at_s);
  hour.set_rate_sun = pace(sunny, at_s);
  hour.set_rate_shade = pace(shady, at_s);
  return hour;
}

UtcTime whole_hour_before(UtcTime time) {
  const auto seconds = time.time_of_day().total_seconds();
  constexpr int hour_seconds = 3600;
  return time - boost::posix_time::seconds(seconds % hour_seconds);
}

/// Full hours from before placing to after sunset, as far as the weather data reaches.
TimeGrid hours_of_day(const Job& job, const WeatherSeries& series, const SunTimes& sun) {
  const UtcTime first =
      after_seconds(whole_hour_before(job.pour.start), -hours_before * seconds_per_hour);
  const UtcTime last = sun.kind == SunTimes::Kind::ordinary
                           ? after_seconds(sun.set, hours_after_sunset * seconds_per_hour)
                           : after_seconds(first, hours_without_sunset * seconds_per_hour);
  TimeGrid grid;
  grid.step_s = seconds_per_hour;
  grid.start = first;
  while (grid.start < series.first()) grid.start = after_seconds(grid.start, grid.step_s);
  const double whole_s = seconds_between(grid.start, std::min(last, series.last()));
  grid.count = static_cast<std::size_t>(std::max(0.0, whole_s) / grid.step_s) + 1;
  return grid;
}

}  // namespace

Outlook look_ahead(const PlannedPour& pour) {
  const WeatherSeries series = WeatherSeries::from_forecast(pour.forecast).value.value();
  const SiteWeather weather =
      site_weather(pour.job.site, series, hours_of_day(pour.job, series, pour.plan.sun));
  const Spot sunny = find_spot(pour.run, false);
  const Spot shady = find_spot(pour.run, true);
  Outlook outlook;
  for (std::size_t k = 0; k < weather.grid.count; ++k) {
    outlook.hours.push_back(hour_at(weather, k, sunny, shady, pour.run));
  }
  Judgement judged = judge(pour.plan.cautions);
  outlook.verdict = judged.verdict;
  outlook.reasons = std::move(judged.reasons);
  return outlook;
}

}  // namespace slabtide
