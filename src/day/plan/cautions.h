#pragma once

#include <vector>

#include "caution_watch.h"

namespace slabtide {

/// Finds all cautions of a planned day, each with its time, in order of time; those that apply all
/// day come last. All commands show this one list.
std::vector<Caution> find_cautions(Watch watch);

}  // namespace slabtide
