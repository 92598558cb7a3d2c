#pragma once

#include <string>

#include "slabtide/report/words/compare_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The choices as a table of 80 columns, one row each with the best marked, then the advice.
std::string text_compare(const CompareFacts& facts, const TextStyle& style);

}  // namespace slabtide
