#pragma once

#include <string>
#include <vector>

#include "slabtide/day/plan/caution.h"
#include "slabtide/job/model/job.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The cautions with their times, those that ask for the same merged, the worst first, wrapped at
/// the style's width. Those that nobody gets to (`max_told_cautions`), and notes on less than
/// people and the slab, are only named in a line at the end, unless `all` is asked for.
std::string text_cautions(const std::vector<Caution>& cautions, const Job& job,
                          const TextStyle& style, bool all = false);

}  // namespace slabtide
