#pragma once

#include <nlohmann/json_fwd.hpp>

#include "asked.h"

namespace slabtide {

// The answers that come of planning the job: the day, what can still be changed, its weather.

nlohmann::ordered_json answer_plan(const Asked& asked);
nlohmann::ordered_json answer_compare(const Asked& asked);
nlohmann::ordered_json answer_outlook(const Asked& asked);

}  // namespace slabtide
