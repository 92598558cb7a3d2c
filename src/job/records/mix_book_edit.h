#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/job/records/mix_book.h"

namespace slabtide {

/// The book as `read_mix_book` reads it: factors to a thousandth, minutes whole.
std::string mix_book_text(const MixBook& book);

/// A mix book's text with the pour in it, in place of the same job's at the same site on the same
/// day. All else stays to the byte: remarks, blank lines, what was mended by hand; where the pour
/// stands there just so already, the whole text does. Of a pour that goes (its mix has another
/// name now) the remarks stay. An empty text gets the heading of a book.
///
/// Empty where the text is no mix book, or is written in a way that this cannot be done in: mixes
/// and pours in tables without headers of their own, a list over several lines.
std::optional<std::string> with_pour(std::string_view text, const std::string& mix,
                                     const BookedPour& pour);

}  // namespace slabtide
