#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "published/seen_row.h"

namespace slabtide::test {

/// A row that the program does not meet, and by how much, to the digits that the tables show.
struct Miss {
  std::string_view row;
  double apart = 0.0;
};

/// A check with such rows.
struct MissedCheck {
  std::string_view what;      ///< as the check calls itself
  std::string_view in_words;  ///< what it is about, as a contractor says it
  std::string_view why;       ///< what is known of the reason, or what it means for a plan
  std::vector<Miss> rows;
  bool is_minor = false;  ///< far smaller than what a forecast is off by
};

/// The check of that name; null where `list` has none.
const MissedCheck* missed_check(const std::vector<MissedCheck>& list, std::string_view what);

/// What is wrong with a row by that list, in a sentence: it misses and is not listed, is listed
/// and meets, or misses by another figure than is listed. Empty where nothing is.
std::string unannounced(const SeenRow& row, const std::vector<MissedCheck>& list);

/// Listed rows that are not among `rows`, a sentence each.
std::vector<std::string> never_seen(const std::vector<SeenRow>& rows,
                                    const std::vector<MissedCheck>& list);

}  // namespace slabtide::test
