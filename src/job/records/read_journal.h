#pragma once

#include <string_view>

#include "slabtide/core/diagnostic.h"
#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// Reads a journal, one observation per line:
///
///     2026-05-14 11:05  thumbprint   landing
///     2026-05-14 11:20  surface 88 °F  walk "last 20 ft"   # anything behind a number sign
///     undo
///
/// Each line has the day and time on the site's clock (or an instant with an offset, or a time
/// alone, as `clock_instant` takes it), the id of the observation, its value with the unit if it
/// has one, the zone, and a part of the zone. Names with a blank are quoted; a backslash inside
/// quotation marks works as in TOML. `undo` strikes out the last line before it that counts.
///
/// A last line without a line break was cut short by a crash or is still being typed: it is skipped
/// with a warning. A line that ends in `unfinished_mark` was such a line.
///
/// Refused are: an unknown observation or zone, a value that no concrete or weather has, a time
/// days from the pour or before the zone was placed, a zone placed twice. Every finding has its
/// line and column; `value` is present only if there is no error.
Parsed<Journal> read_journal(std::string_view text, const Job& job);

/// A clock time of the pour: the first such time from `early_start_h` before its planned start. A
/// time that the clocks skip is moved forward.
UtcTime clock_instant(Duration clock, const Job& job);

inline constexpr double early_start_h = 3.0;  ///< a pour may run ahead of its plan

/// Words of the file itself: the mark of a line that a crash cut short, and the line that undoes
/// the one before.
inline constexpr std::string_view unfinished_mark = "# not finished";
inline constexpr std::string_view undo_word = "undo";

}  // namespace slabtide
