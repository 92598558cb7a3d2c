#include "published/missed_check.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace slabtide::test {

namespace {

const Miss* miss_of(const MissedCheck& check, std::string_view row) {
  const auto found = std::ranges::find(check.rows, row, &Miss::row);
  return found == check.rows.end() ? nullptr : &*found;
}

/// Equal apart from rounding by different compilers.
bool is_as_listed(const SeenRow& row, const Miss& miss) {
  constexpr double one_and_a_hair = 1.01;
  const double last_digit = std::pow(10.0, -decimals_of(row));
  return std::abs(row.apart - miss.apart) <= one_and_a_hair * last_digit;
}

}  // namespace

const MissedCheck* missed_check(const std::vector<MissedCheck>& list, std::string_view what) {
  const auto found = std::ranges::find(list, what, &MissedCheck::what);
  return found == list.end() ? nullptr : &*found;
}

std::string unannounced(const SeenRow& row, const std::vector<MissedCheck>& list) {
  const MissedCheck* check = missed_check(list, row.what);
  const Miss* miss = check == nullptr ? nullptr : miss_of(*check, row.row);
  const std::string entry = fmt::format("{{\"{}\", {}}}", row.row, apart_text(row));
  if (miss == nullptr) {
    if (meets(row)) return {};
    return fmt::format("misses and does_not_meet.cpp does not list it: {}", entry);
  }
  if (meets(row)) return "meets, but does_not_meet.cpp lists it";
  if (is_as_listed(row, *miss)) return {};
  return fmt::format("misses by other than does_not_meet.cpp says, {:+g}: {}", miss->apart, entry);
}

std::vector<std::string> never_seen(const std::vector<SeenRow>& rows,
                                    const std::vector<MissedCheck>& list) {
  std::vector<std::string> result;
  for (const MissedCheck& check : list) {
    for (const Miss& miss : check.rows) {
      const bool is_seen = std::ranges::any_of(
          rows, [&](const SeenRow& row) { return row.what == check.what && row.row == miss.row; });
      if (!is_seen) {
        result.push_back(
            fmt::format("does_not_meet.cpp lists {}, {}: no such row", check.what, miss.row));
      }
    }
  }
  return result;
}

}  // namespace slabtide::test
