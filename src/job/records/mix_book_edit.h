#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/job/records/mix_book.h"

namespace slabtide {

/// The book as text for `read_mix_book`: factors to a thousandth, minutes whole.
std::string mix_book_text(const MixBook& book);

/// A mix book's text with the pour in it, replacing one of the same job at the same site on the
/// same day. All other text is kept to the byte: comments, blank lines, manual edits; if the pour
/// is already there with the same values, the text does not change at all. Comments of a removed
/// pour stay (a pour is removed when its mix has a new name). An empty text gets the heading of a
/// book.
///
/// Empty if the text is not a mix book, or is written in a way that does not allow the edit: mixes
/// or pours in tables without their own header, or a list over several lines.
std::optional<std::string> with_pour(std::string_view text, const std::string& mix,
                                     const BookedPour& pour);

}  // namespace slabtide
