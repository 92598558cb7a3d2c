#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/job/records/mix_book.h"

// The pieces that a mix book's text is made of.

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

/// The measured values of a pour, without its names and dates.
std::vector<BookEntry> measured_entries(const BookedPour& pour);

/// The entry as a line, indented like the other lines of a pour.
std::string entry_line(const BookEntry& entry);

/// The table of a mix, without pours.
std::string mix_text(const std::string& name);

/// The table of a pour.
std::string pour_text(const BookedPour& pour);

}  // namespace slabtide
