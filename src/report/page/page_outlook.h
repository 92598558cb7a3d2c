#pragma once

#include <string>

#include "slabtide/report/words/outlook_facts.h"

namespace slabtide {

/// The outlook as a self-contained page: whether to pour, the hours, and what to watch for.
/// `data-json` points into json_plan's document; the hours are not in any JSON.
std::string page_outlook(const OutlookFacts& facts);

}  // namespace slabtide
