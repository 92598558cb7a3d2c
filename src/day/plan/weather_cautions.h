#pragma once

#include "caution_watch.h"

namespace slabtide {

// Rules about the air and the ground, and protection against both.
void watch_cold(Watch& watch);
void watch_ground(Watch& watch);
void watch_freezing(Watch& watch);
void watch_hot_weather(Watch& watch);
void watch_dry_air(Watch& watch);
void watch_wind(Watch& watch);
void watch_rain(Watch& watch);
void watch_dew(Watch& watch);
void watch_dark(Watch& watch);
void watch_covers(Watch& watch);
void watch_forecast(Watch& watch);

}  // namespace slabtide
