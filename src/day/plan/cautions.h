#pragma once

#include <vector>

#include "caution_watch.h"

namespace slabtide {

/// Every caution of a day that is planned but for its cautions, each with its hour, in the
/// order of time; those that hold all day come last. The one list that all commands show.
std::vector<Caution> find_cautions(Watch watch);

}  // namespace slabtide
