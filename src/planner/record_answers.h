#pragma once

#include <nlohmann/json_fwd.hpp>

#include "asked.h"

namespace slabtide {

// The answers about what is kept beside a job: its journal, and the mix book.

nlohmann::ordered_json answer_note(const Asked& asked);
nlohmann::ordered_json answer_check_back(const Asked& asked);
nlohmann::ordered_json answer_learn(const Asked& asked);
nlohmann::ordered_json answer_mixes(const Asked& asked);

}  // namespace slabtide
