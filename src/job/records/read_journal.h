#pragma once

#include <string_view>

#include "slabtide/core/diagnostic.h"
#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// Reads a journal, one observation per line:
///
///     2026-05-14 11:05  thumbprint   landing
///     2026-05-14 11:20  surface 88 °F  walk "last 20 ft (along-2-of-2)"   # anything behind this
///     sign undo
///
/// which is the day and the time on the site's clock (or an instant with its offset, or a time
/// alone, as `clock_instant` takes it), the reading by its id, its value with the unit where it
/// has one, the zone by its name in the job and a part of it: as the plan called it, with what the
/// plan knows it by under any forecast (PlaceId) behind it in parentheses. A name alone is looked
/// for among those of the plan. Names with a blank stand in quotation marks, where a backslash does
/// what it does in TOML. `undo` strikes the last line before it that counts.
///
/// A last line without a line break was cut short by a crash or is still being typed: it is skipped
/// with a warning. A line that ends in `unfinished_mark` was such a line.
///
/// Refused are: an unknown observation or zone, a value that no concrete or weather has, a time
/// days from the pour or before the zone was placed, a zone placed twice. Every finding has its
/// line and column; `value` is present only if there is no error.
Parsed<Journal> read_journal(std::string_view text, const Job& job);

inline constexpr double early_start_h = 3.0;  ///< a pour may run ahead of its plan

/// A clock time of the pour: that of its own day, or of the next if that would be earlier than
/// `earliest_h` after the planned start. A time that the clocks skip is moved forward. `sawed` and
/// `crack` cannot come before the start (0): before it they are of the next morning.
UtcTime clock_instant(Duration clock, const Job& job, double earliest_h = -early_start_h);

/// Words of the file itself: the mark of a line that a crash cut short, and the line that undoes
/// the one before.
inline constexpr std::string_view unfinished_mark = "# not finished";
inline constexpr std::string_view undo_word = "undo";

}  // namespace slabtide
