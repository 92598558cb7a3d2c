#pragma once

#include <string>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// That a pour so large was worked out in larger cells than its plan, to be computed many times
/// over; empty where it was not.
std::string larger_cells_words(const Job& job);

}  // namespace slabtide
