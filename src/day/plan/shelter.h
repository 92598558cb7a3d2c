#pragma once

#include <string>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"

// Whether shelter from sun and wind makes sense over a zone, from its placing to its initial set.

namespace slabtide {

/// Why shade makes none: "it is in the shade already"; empty if it does.
std::string why_no_shade(const ZonePlan& zone, const PourRun& run, const ShelterRules& rules,
                         UnitSystem units);

bool windbreak_makes_sense(const ZonePlan& zone, const PourRun& run, const ShelterRules& rules);

/// Whether it is warm enough for water mist not to chill or freeze: over WeatherLimits::cold_air_c.
bool fog_makes_sense(const ZonePlan& zone, const PourRun& run, const WeatherLimits& limits);

/// What of these makes sense, with an evaporation film, which always does: "windbreak, shade, fog
/// or an evaporation film".
std::string drying_shelter_words(const ZonePlan& zone, const PourRun& run, const Practice& practice,
                                 UnitSystem units);

}  // namespace slabtide
