#pragma once

#include "json_values.h"
#include "slabtide/day/plan/verdict.h"

// Whether to pour, and what speaks against it, as the JSON documents have it.

namespace slabtide {

Json json_verdict(const Judgement& judged);
Json json_caution(const Caution& caution, const Job& job);

}  // namespace slabtide
