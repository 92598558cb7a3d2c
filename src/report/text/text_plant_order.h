#pragma once

#include <string>

#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// The order as the plant hears it, to be read out or sent as a message: loads in quarter yards (or
/// quarter cubic metres), when each is wanted, mix, temperature, admixtures by the load, and until
/// when it can be called off. Plain text.
std::string text_plant_order(const PlannedPour& facts);

}  // namespace slabtide
