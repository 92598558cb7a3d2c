#pragma once

#include <string>
#include <vector>

#include "slabtide/day/plan/caution.h"
#include "slabtide/job/model/job.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The cautions with their times, those that ask for the same merged, the worst first, wrapped at
/// 80 columns.
std::string text_cautions(const std::vector<Caution>& cautions, const Job& job,
                          const TextStyle& style);

}  // namespace slabtide
