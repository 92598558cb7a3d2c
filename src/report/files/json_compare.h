#pragma once

#include <string>

#include "slabtide/report/words/compare_facts.h"

namespace slabtide {

/// The comparison as JSON, schema 1: times ISO 8601 with offset to the minute, quantities SI with
/// the unit in the key; null for what does not happen. Ends in a newline.
std::string json_compare(const CompareFacts& facts);

}  // namespace slabtide
