#include "mix_book_words.h"
#include "core/rounded.h"

#include <cmath>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>

#include "core/rounded.h"
#include "job/toml/toml_tree.h"

namespace slabtide {
namespace {

/// A TOML basic string.
std::string toml_text(std::string_view text) {
  std::string result = "\"";
  for (const char c : text) {
    constexpr unsigned char first_printable = 0x20;
    constexpr unsigned char delete_character = 0x7F;
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      result += {'\\', c};
    } else if (byte < first_printable || byte == delete_character) {
      result += fmt::format("\\u{:04X}", byte);
    } else {
      result += c;
    }
  }
  return result + '"';
}

std::string minutes_text(const std::vector<double>& late_min) {
  std::string minutes;
  for (const double late : late_min) {
    minutes += fmt::format("{}{}", minutes.empty() ? "" : ", ", std::lround(late));
  }
  return fmt::format("[{}]", minutes);
}

}  // namespace

std::vector<BookEntry> measured_entries(const BookedPour& pour) {
  std::vector<BookEntry> entries{{"set_factor", fmt::format("{:.3f}", pour.set_factor)},
                                 {"readings", fmt::format("{}", pour.readings)}};
  if (pour.air_k) entries.push_back({"air_k", fmt::format("{:.1f}", rounded(*pour.air_k, 1))});
  entries.push_back({"late_min", minutes_text(pour.late_min)});
  return entries;
}

std::string entry_line(const BookEntry& entry) {
  return fmt::format("  {} = {}\n", entry.key, entry.value);
}

std::string mix_text(const std::string& name) {
  return fmt::format("\n[[mix]]\nname = {}\n", toml_text(name));
}

std::string pour_text(const BookedPour& pour) {
  std::string text =
      fmt::format("\n  [[mix.pour]]\n  job = {}\n  site = {}\n  date = {}\n", toml_text(pour.job),
                  toml_text(pour.site), boost::gregorian::to_iso_extended_string(pour.date));
  for (const BookEntry& entry : measured_entries(pour)) text += entry_line(entry);
  return text;
}

}  // namespace slabtide
