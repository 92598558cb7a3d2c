#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/job/records/mix_book.h"

// A mix book's text in its pieces.

namespace slabtide {

/// What a new book starts with.
inline constexpr std::string_view mix_book_heading =
    "# What finished pours have shown of each mix (slabtide learn). set_factor: set times noted\n"
    "# over those of the mix as described. late_min: minutes that each event came after the\n"
    "# plan's hour. air_k: air on site over the forecast, kelvin. A pour that should not count\n"
    "# can be taken out.\n";

/// A key of a pour and its value as TOML.
struct BookEntry {
  std::string_view key;
  std::string value;
};

/// What was measured of a pour: all but what names it.
std::vector<BookEntry> measured_entries(const BookedPour& pour);

/// The entry's line, as deep as those of a pour stand.
std::string entry_line(const BookEntry& entry);

/// The table of a mix, without pours.
std::string mix_text(const std::string& name);

/// The table of a pour.
std::string pour_text(const BookedPour& pour);

}  // namespace slabtide
