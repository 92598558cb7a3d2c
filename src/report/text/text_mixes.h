#pragma once

#include <string>

#include "slabtide/job/records/mix_book.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The mix book for a terminal, 80 columns: what plans use from it, and how far off they were.
std::string text_mixes(const MixBook& book, const TextStyle& style);

}  // namespace slabtide
