#pragma once

#include <string>

#include "slabtide/report/words/compare_facts.h"

namespace slabtide {

/// The comparison as a self-contained page: what to order and why, then every choice with its
/// figures. `data-json` points into json_compare's document.
std::string page_compare(const CompareFacts& facts);

}  // namespace slabtide
