#pragma once

#include "caution_watch.h"

namespace slabtide {

// Rules about the concrete and the work on it.
void watch_concrete_temperature(Watch& watch);
void watch_evaporation(Watch& watch);
void watch_tops(Watch& watch);
void watch_chloride(Watch& watch);
void watch_sealer(Watch& watch);
void watch_bleed_water(Watch& watch);
void watch_windows(Watch& watch);
void watch_after_plan(Watch& watch);
void watch_wash_off(Watch& watch);
void watch_crew(Watch& watch);
void watch_loads(Watch& watch);

}  // namespace slabtide
