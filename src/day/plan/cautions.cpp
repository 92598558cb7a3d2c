#include "cautions.h"

#include <algorithm>
#include <array>
#include <utility>

#include "crew_cautions.h"
#include "saw_cautions.h"
#include "slab_cautions.h"
#include "weather_cautions.h"

namespace slabtide {

namespace {

void add_standing_notes(Watch& watch) {
  watch.add("wet_cement", "wet cement", CautionLevel::note, {}, std::nullopt,
            "wet cement burns skin and eyes (pH 12-13): gloves, boots and eye protection, wash "
            "it off at once",
            "common practice");
  watch.add("silica", "silica dust", CautionLevel::note, {}, std::nullopt,
            "sawing makes silica dust: water to the blade or a shroud with a vacuum; outdoors, a "
            "handheld saw over 4 h a shift needs a respirator (APF 10)",
            "OSHA 29 CFR 1926.1153 Table 1, published");
  add_saw_notes(watch);
  watch.add("licensed_practice", "estimates only", CautionLevel::note, {}, std::nullopt,
            "these times are estimates: the slab decides. Structural slabs, local codes and the "
            "mix supplier's word come before them",
            "common practice");
}

}  // namespace

std::vector<Caution> find_cautions(Watch watch) {
  constexpr std::array rules{watch_concrete_temperature,
                             watch_cold,
                             watch_ground,
                             watch_freezing,
                             watch_evaporation,
                             watch_hot_weather,
                             watch_dry_air,
                             watch_wind,
                             watch_tops,
                             watch_rain,
                             watch_dew,
                             watch_dark,
                             watch_covers,
                             watch_chloride,
                             watch_sealer,
                             watch_bleed_water,
                             watch_windows,
                             watch_wash_off,
                             watch_after_plan,
                             watch_crew,
                             watch_heat,
                             watch_hours,
                             watch_way_in,
                             watch_joints,
                             watch_saws,
                             watch_loads,
                             watch_forecast};
  for (const auto rule : rules) rule(watch);
  std::stable_sort(watch.found.begin(), watch.found.end(),
                   [](const Caution& a, const Caution& b) { return a.at < b.at; });
  add_standing_notes(watch);
  return std::move(watch.found);
}

}  // namespace slabtide
