#include "concrete_choices.h"

#include <cmath>

#include <fmt/format.h>

#include "job/model/limits.h"
#include "job/model/wording.h"
#include "slab/mix/mix_temperature.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Over this, concrete is no longer warmed: hot water stiffens it in the drum, and ACI 306 wants it
/// within 11 K (20 F) of the least it asks for (from memory; the figure of a thin section's 13 C).
constexpr double warmest_c = 24.0;

/// Under this, concrete for a slab is no longer chilled: a retarder slows it for less (common
/// practice, no source; 65 F).
constexpr double coolest_c = 18.3;

/// "about 22 lb of ice a yd³".
std::string ice_words(double kg_m3, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.0f} lb of ice a yd³", lb_yd3_from_kg_m3(kg_m3))
                                 : fmt::format("{:.0f} kg of ice a m³", kg_m3);
}

void add_temperature(const ChoiceContext& context, double by_k, ChoiceList& list) {
  const Mix& mix = context.job.mix;
  const UnitSystem units = context.job.units;
  const double now_c = discharge_temperature_c(mix);
  const std::string degrees = temperature_difference_words(std::abs(by_k), units);
  const bool cooler = by_k < 0.0;
  const WaterForTemperature needs = water_for(mix, now_c, by_k);
  OfferedChoice offered{
      ChoiceKind::concrete,
      fmt::format("concrete {} {}", degrees, cooler ? "cooler" : "warmer"),
      fmt::format("{} {}", degrees, cooler ? "cooler" : "warmer"),
      fmt::format("order the concrete at {}", temperature_words(now_c + by_k, units)),
      {}};
  offered.words += cooler ? fmt::format(" (chilled water, or about {} instead of water)",
                                        ice_words(needs.ice_kg_m3, units))
                          : fmt::format(" (mix water about {} hotter)",
                                        temperature_difference_words(needs.water_k, units));
  if (!cooler && now_c + by_k > warmest_c) {
    list.leave_out(offered.label, "it would stiffen in the drum");
    return;
  }
  if (cooler && now_c + by_k < coolest_c) {
    list.leave_out(offered.label, fmt::format("nobody ices a slab's concrete under {}",
                                              temperature_words(coolest_c, units)));
    return;
  }
  offered.change.concrete_c = now_c + by_k;
  list.offer(std::move(offered));
}

}  // namespace

void add_concrete_choices(const ChoiceContext& context, ChoiceList& list) {
  const CompareRules& rules = context.rules;
  const bool cold =
      context.fears({"freezing", "frost_days", "cold_weather", "cold_concrete", "after_plan"});
  const bool hot = context.fears({"hot_concrete", "hot_weather", "evaporation_precautions",
                                  "evaporation_caution", "crust", "early_sheen", "no_window",
                                  "short_window", "late_crew", "late_days", "discharge_limit"});
  if (cold) {
    for (const int times : {1, 2}) add_temperature(context, times * rules.warmer_k, list);
  } else if (hot || context.runs_late()) {
    for (const int times : {1, 2}) add_temperature(context, -times * rules.cooler_k, list);
  }
}

}  // namespace slabtide
