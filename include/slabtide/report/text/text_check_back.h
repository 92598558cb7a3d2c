#pragma once

#include <string>

#include "slabtide/report/words/check_back_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// What was noted and what the plan says, 80 columns, in order of time: the events with a mark on a
/// scale of minutes early and late, then the measurements. Ends in a newline.
std::string text_check_back(const CheckBackFacts& facts, const TextStyle& style);

}  // namespace slabtide
