#include "slabtide/report/text_style.h"

#include <fmt/color.h>
#include <fmt/format.h>

#include "slabtide/core/text.h"

namespace slabtide {

std::string TextStyle::heading(std::string_view text) const {
  return colour ? fmt::format(fmt::emphasis::bold, "{}", text) : std::string(text);
}

std::string TextStyle::warning(std::string_view text) const {
  return colour
             ? fmt::format(fmt::emphasis::bold | fmt::fg(fmt::terminal_color::yellow), "{}", text)
             : std::string(text);
}

std::string paragraph(std::string_view text, std::size_t lead, std::size_t hang) {
  std::string whole(lead, ' ');
  whole.append(text);
  return wrap(whole, text_width, hang).append(1, '\n');
}

std::string both_ends(std::string_view left, std::string_view right) {
  const std::size_t taken = display_width(left) + display_width(right);
  const std::size_t gap = taken + 2 <= text_width ? text_width - taken : 2;
  return std::string(left) + std::string(gap, ' ') + std::string(right) + "\n";
}

std::string pad(std::string_view text, std::size_t width) {
  std::string cut(text);
  while (display_width(cut) > width) {
    // Take off whole characters: a UTF-8 tail byte goes with its lead byte.
    do {
      const char last = cut.back();
      cut.pop_back();
      constexpr unsigned tail_mask = 0xC0;
      constexpr unsigned tail_bits = 0x80;
      if ((static_cast<unsigned char>(last) & tail_mask) != tail_bits) break;
    } while (!cut.empty());
  }
  return cut.append(width - display_width(cut), ' ');
}

}  // namespace slabtide
