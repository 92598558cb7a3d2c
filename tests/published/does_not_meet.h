#pragma once

#include <vector>

#include "published/missed_check.h"

namespace slabtide::test {

/// Every row of every check that the program does not meet: the one place where they are listed.
/// The tests fail when a row joins or leaves them, or misses by other than it says here; the
/// READMEs are made of it.
const std::vector<MissedCheck>& does_not_meet();

}  // namespace slabtide::test
