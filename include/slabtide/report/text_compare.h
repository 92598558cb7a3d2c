#pragma once

#include <string>

#include "slabtide/report/compare_facts.h"
#include "slabtide/report/text_style.h"

namespace slabtide {

/// The choices as a table of 80 columns, one row each with the best marked, then the advice.
std::string text_compare(const CompareFacts& facts, const TextStyle& style);

}  // namespace slabtide
