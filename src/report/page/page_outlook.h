#pragma once

#include <string>

#include "slabtide/report/words/outlook_facts.h"

namespace slabtide {

/// The outlook as a page that stands by itself: whether to pour, the hours, what to watch for.
/// `data-json` points into json_plan's document; the hours are in no JSON.
std::string page_outlook(const OutlookFacts& facts);

}  // namespace slabtide
