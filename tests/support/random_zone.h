#pragma once

#include <string>
#include <vector>

#include "support/random_toml.h"

namespace slabtide::test {

/// A clock time of the pour's day, "14:30", or with its date.
std::string random_clock(ByteSource& bytes, double from_h, double to_h);

/// "2026-05-14T08:00", so many days after the date.
std::string dated(const std::string& date, int days, const std::string& clock);

/// The tables [[NAME.admixture]] of something that has them, or none.
void random_admixtures(RandomToml& toml, const std::string& table);

/// The tables [[zone]], beside one another, and [[obstacle]] about them.
void random_zones(RandomToml& toml, const std::vector<std::string>& names, const std::string& date,
                  bool faulty);

}  // namespace slabtide::test
