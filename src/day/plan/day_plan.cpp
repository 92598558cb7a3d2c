#include "slabtide/day/plan/day_plan.h"

#include <algorithm>
#include <limits>

#include <fmt/format.h>

#include "cautions.h"
#include "core/parallel.h"
#include "core/rounded.h"
#include "day/pour/pour_span.h"
#include "day/pour/validate_run.h"
#include "job/checks/validate.h"
#include "job/model/wording.h"
#include "slabtide/day/crew/plan_crew.h"

namespace slabtide {

namespace {

constexpr double forecast_wind_height_m = 10.0;  // as the WMO has wind measured

void take_if_tighter(std::optional<Tightest>& tightest, const ZonePlan& zone, std::size_t index,
                     const PartPlan& part, Operation operation) {
  const OperationWindow* window = part.window(operation);
  if (window == nullptr) return;
  const auto minutes = window->minutes();
  if (!minutes || (tightest && rounded(tightest->minutes) <= rounded(*minutes))) return;
  tightest = Tightest{{index, part.id}, zone.name, part.name, operation, *window->opens, *minutes};
}

std::optional<Tightest> find_tightest(const Job& job, const std::vector<ZonePlan>& zones) {
  std::optional<Tightest> tightest;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    const Operation operation = main_operation(job.zones[i].finish);
    if (zones[i].parts.empty()) take_if_tighter(tightest, zones[i], i, zones[i].whole, operation);
    for (const PartPlan& part : zones[i].parts) {
      take_if_tighter(tightest, zones[i], i, part, operation);
    }
  }
  return tightest;
}

/// "81 °F", or "70 °F to 84 °F", as concrete reaches it.
std::string base_top_words(const PourRun& run, UnitSystem units) {
  double min_c = std::numeric_limits<double>::infinity();
  double max_c = -min_c;
  for (const PouredColumn& poured : run.columns) {
    if (poured.column.ground.empty()) continue;
    min_c = std::min(min_c, poured.column.ground.front().temperature_c);
    max_c = std::max(max_c, poured.column.ground.front().temperature_c);
  }
  const std::string low = temperature_words(min_c, units);
  const std::string high = temperature_words(max_c, units);
  return low == high ? low : fmt::format("{} to {}", low, high);
}

/// Of the figures of a typed day that nobody gave.
void add_typed_weather(const Job& job, std::vector<std::string>& said) {
  const auto* const typed = std::get_if<TypedWeather>(&job.weather);
  if (typed == nullptr) return;
  if (typed->wind_is_assumed) {
    said.push_back(fmt::format("wind {}, as none is given: the forecast's is better",
                               wind_words(typed->wind_10m_m_s, job.units)));
  }
  if (typed->cloud_is_assumed) {
    said.emplace_back("a clear sky, as no cloud is given: the forecast's is better");
  }
  if (!typed->dew_point_c && !typed->humidity_at_high) {
    said.push_back(
        fmt::format("dew point {}, the morning's low, as none is given: the forecast's "
                    "is better",
                    temperature_words(typed->low_c, job.units)));
  }
  if (!typed->next_low_c) {
    said.push_back(
        fmt::format("the night after as cold as the one before, {}, as nothing else is "
                    "given: look for frost in the forecast",
                    temperature_words(typed->low_c, job.units)));
  }
}

void add_faces(const Job& job, std::vector<std::string>& said) {
  for (const Zone& zone : job.zones) {
    const auto is_assumed = [&zone](const FormedFace& face) {
      return face.tread_is_assumed && face.height_m > zone.thickness_m;
    };
    if (std::none_of(zone.faces.begin(), zone.faces.end(), is_assumed)) continue;
    said.push_back(
        fmt::format("concrete {} deep behind the {} of the {}, where no `tread` is given: "
                    "set it, the order depends on it",
                    length_words(FormedFace().tread_m, job.units),
                    zone.faces.size() == 1 ? "face" : "faces", zone.name));
  }
}

std::vector<std::string> assumptions_of(const Job& job, const PourRun& run) {
  std::vector<std::string> said = run.mix_of(run.zones.front()).notes;
  if (job.mix.temperature_is_assumed) {
    said.push_back(
        fmt::format("concrete at {} at the chute ({}), as nobody told it: ask the plant",
                    temperature_words(run.mix_of(run.zones.front()).discharge_c, job.units),
                    assumed_concrete_words(job.units)));
  }
  add_typed_weather(job, said);
  add_faces(job, said);
  if (job.mix.water_source != WaterSource::told) {
    const bool by_slump = job.mix.water_source == WaterSource::slump;
    said.push_back(
        fmt::format("w/cm {:.2f}, as plain mixes of that {} have (ACI 211.1): ask the "
                    "plant",
                    job.mix.w_cm, by_slump ? "slump and cement" : "strength"));
  }
  if (!job.site.ground_c) {
    said.push_back(fmt::format(
        "ground at {}, the mean air of the day before and the day itself; the top of the base at "
        "{}, as sun, air and night leave it",
        temperature_words(run.ground_c, job.units), base_top_words(run, job.units)));
  }
  if (!job.site.measured_wind_ratio) {
    said.push_back(fmt::format("wind at the slab is {} of the forecast's, which is for {} up",
                               percent_words(run.weather.wind_ratio),
                               length_words(forecast_wind_height_m, job.units)));
  }
  said.push_back(fmt::format("{:.0f} min from batching to placing, {} an hour placed",
                             job.pour.transit_min,
                             volume_words(run.order.placing_rate_m3_h, job.units)));
  return said;
}

}  // namespace

DayPlan plan_day(const Job& job, const PourRun& run, const Practice& practice,
                 std::optional<double> forecast_age_h, const PlanScope& scope) {
  validate(job);
  validate(run, job);
  validate(practice);
  DayPlan plan;
  plan.sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  plan.zones.resize(job.zones.size());
  in_parallel(job.zones.size(), scope.threads, [&](std::size_t i) {
    plan.zones[i] = plan_zone(job.zones[i], run.zones[i], job, run, practice);
  });
  plan.cuts = plan_cuts(job, run, practice, scope.cuts, scope.threads);
  for (std::size_t i = 0; i < plan.zones.size(); ++i) {
    plan.zones[i].saws = saws_of_cuts(std::move(plan.zones[i].saws), plan.cuts, i);
  }
  plan.tightest = find_tightest(job, plan.zones);
  plan.crew = plan_crew(job, plan.zones, plan.cuts, practice, scope.crew, scope.threads);
  plan.supplies = take_along(job, run.order, plan.zones, practice);
  plan.cautions = find_cautions(
      {job, run, plan.zones, plan.cuts, plan.crew, plan.sun, practice, forecast_age_h});
  plan.assumptions = assumptions_of(job, run);
  return plan;
}

}  // namespace slabtide
