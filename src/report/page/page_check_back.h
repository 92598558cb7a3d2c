#pragma once

#include <string>

#include "slabtide/report/words/check_back_facts.h"

namespace slabtide {

/// What was noted and what was planned as one HTML document like `page_plan`: every event with a
/// bar for the minutes it was early or late, then the measurements. Its figures point into
/// `json_check_back`.
std::string page_check_back(const CheckBackFacts& facts);

}  // namespace slabtide
