#pragma once

#include <string>

#include "slabtide/report/words/check_back_facts.h"

namespace slabtide {

/// What was noted beside what was planned as one HTML document, as `page_plan` is one: every event
/// with a bar of the minutes it came early or late, then the measurements. Its figures point into
/// `json_check_back`.
std::string page_check_back(const CheckBackFacts& facts);

}  // namespace slabtide
