#pragma once

#include <vector>

#include "published/missed_check.h"

namespace slabtide::test {

/// Every row of every check that the program does not meet: the only place where they are listed.
/// The tests fail if a row joins or leaves the list, or misses by a different amount; the READMEs
/// are generated from it.
const std::vector<MissedCheck>& does_not_meet();

}  // namespace slabtide::test
