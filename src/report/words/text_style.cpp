#include "slabtide/report/words/text_style.h"

#include <algorithm>
#include <array>
#include <vector>

#include <fmt/color.h>
#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"

namespace slabtide {

namespace {

/// The codes fmt writes for the two styles below and to end them.
constexpr std::array<std::string_view, 3> colour_codes{"\x1b[1m", "\x1b[33m", "\x1b[0m"};
constexpr char escape = '\x1b';

/// The colour code that `text` begins with; empty if there is none.
std::string_view colour_code_of(std::string_view text) {
  const auto* const code =
      std::find_if(colour_codes.begin(), colour_codes.end(),
                   [text](std::string_view each) { return text.starts_with(each); });
  return code == colour_codes.end() ? std::string_view() : *code;
}

/// Calls `take(words, code)` for each stretch without a colour code and the code after it.
template <class Take>
void by_colour(std::string_view styled, Take take) {
  while (!styled.empty()) {
    std::size_t end = 0;
    while (end < styled.size() && colour_code_of(styled.substr(end)).empty()) {
      end = std::min(styled.find(escape, end + 1), styled.size());
    }
    const std::string_view code = colour_code_of(styled.substr(end));
    take(styled.substr(0, end), code);
    styled.remove_prefix(end + code.size());
  }
}

/// Columns of a text that may contain colour codes, which take no columns.
std::size_t columns_of(std::string_view styled) {
  std::size_t columns = 0;
  by_colour(styled, [&](std::string_view words, std::string_view /*code*/) {
    columns += display_width(printable(words));
  });
  return columns;
}

}  // namespace

std::string TextStyle::finished(std::string_view report) const {
  if (!colour) return printable_lines(report);
  std::string result;
  by_colour(report, [&](std::string_view words, std::string_view code) {
    result += printable_lines(words);
    result += code;
  });
  return result;
}

std::string TextStyle::heading(std::string_view text) const {
  return colour ? fmt::format(fmt::emphasis::bold, "{}", text) : std::string(text);
}

std::string TextStyle::warning(std::string_view text) const {
  return colour
             ? fmt::format(fmt::emphasis::bold | fmt::fg(fmt::terminal_color::yellow), "{}", text)
             : std::string(text);
}

std::string TextStyle::paragraph(std::string_view text, std::size_t lead, std::size_t hang) const {
  std::string whole(lead, ' ');
  whole.append(text);
  return wrap(whole, width, hang).append(1, '\n');
}

std::string TextStyle::entry(std::string_view label, std::string_view text, std::size_t lead,
                             std::size_t hang) const {
  const std::size_t taken = lead + columns_of(label);
  if (taken + 1 > hang) return paragraph(fmt::format("{} {}", label, text), lead, hang);
  const std::string body = wrap(std::string(hang, ' ').append(text), width, hang);
  return std::string(lead, ' ').append(label).append(hang - taken, ' ') + body.substr(hang) + "\n";
}

std::string TextStyle::both_ends(std::string_view left, std::string_view right) const {
  const std::size_t taken = columns_of(left) + columns_of(right);
  if (taken + 2 > width) return paragraph(left, 0, 2) + paragraph(right, 2, 2);
  const std::size_t free_width = width - taken;
  return std::string(left) + std::string(free_width, ' ') + std::string(right) + "\n";
}

std::string TextStyle::titled(std::string_view name, std::string_view told) const {
  const std::string title = heading(name);
  if (told.empty()) return paragraph(title, 0, 2);
  if (columns_of(title) + columns_of(told) + 2 <= width)
    return fmt::format("{}  {}\n", title, told);
  return paragraph(title, 0, 2) + paragraph(told, 2, 4);
}

std::string shortened(std::string_view name, std::size_t width) {
  if (display_width(printable(name)) <= width || width == 0) return std::string(name);
  std::vector<std::string_view> characters;
  for (std::string_view rest = name; !rest.empty();) {
    const std::size_t bytes = first_utf8(rest).bytes;
    characters.push_back(rest.substr(0, bytes));
    rest.remove_prefix(bytes);
  }
  std::size_t head = characters.size() / 2;
  std::size_t tail = head;
  const auto words = [&] {
    std::string text;
    for (std::size_t i = 0; i < head; ++i) text += characters[i];
    text += ellipsis;
    for (std::size_t i = tail; i < characters.size(); ++i) text += characters[i];
    return text;
  };
  while (head > 0 && display_width(printable(words())) > width) {
    if (characters.size() - tail < head) {
      --head;
    } else {
      ++tail;
    }
  }
  return words();
}

std::string pad(std::string_view text, std::size_t width) {
  std::string_view cut = text;
  std::string shown = printable(cut);
  while (display_width(shown) > width) {
    // Remove whole characters: continuation bytes go with their lead byte.
    constexpr unsigned tail_mask = 0xC0;
    constexpr unsigned tail_bits = 0x80;
    const auto is_tail = [](char c) {
      return (static_cast<unsigned char>(c) & tail_mask) == tail_bits;
    };
    while (cut.size() > 1 && is_tail(cut.back())) cut.remove_suffix(1);
    cut.remove_suffix(1);
    shown = printable(cut);
  }
  return shown.append(width - display_width(shown), ' ');
}

}  // namespace slabtide
