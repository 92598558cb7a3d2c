#pragma once

#include <string>
#include <vector>

#include "support/random_toml.h"

namespace slabtide::test {

/// A clock time on the pour's day, "14:30", possibly with its date.
std::string random_clock(ByteSource& bytes, double from_h, double to_h);

/// "2026-05-14T08:00", this many days after the date.
std::string dated(const std::string& date, int days, const std::string& clock);

/// The tables [[NAME.admixture]] of a mix, zone or other table, or none.
void random_admixtures(RandomToml& toml, const std::string& table);

/// The tables [[zone]] of adjacent zones, and [[obstacle]] around them.
void random_zones(RandomToml& toml, const std::vector<std::string>& names, const std::string& date,
                  bool faulty);

}  // namespace slabtide::test
