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
  std::string_view what;      ///< the check's own name
  std::string_view in_words;  ///< what it is about, in a contractor's words
  std::string_view why;       ///< what is known of the cause, or what it means for a plan
  std::vector<Miss> rows;
  bool is_minor = false;  ///< far smaller than the error of a forecast
};

/// The check of that name; null if `list` does not have it.
const MissedCheck* missed_check(const std::vector<MissedCheck>& list, std::string_view what);

/// What is wrong with a row according to the list, in a sentence: it misses but is not listed, is
/// listed but meets, or misses by a different amount. Empty if nothing is.
std::string unannounced(const SeenRow& row, const std::vector<MissedCheck>& list);

/// Listed rows that are not among `rows`, one sentence each.
std::vector<std::string> never_seen(const std::vector<SeenRow>& rows,
                                    const std::vector<MissedCheck>& list);

}  // namespace slabtide::test
