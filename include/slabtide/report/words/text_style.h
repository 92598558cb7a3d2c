#pragma once

#include <string>
#include <string_view>

namespace slabtide {

/// How text is styled for its destination: colour only on a terminal.
struct TextStyle {
  bool colour = false;

  std::string heading(std::string_view text) const;
  std::string warning(std::string_view text) const;
  /// A whole report, ready to print: names in it, which come from outside, are made safe by
  /// `printable_lines`; this style's own colours are kept.
  std::string finished(std::string_view report) const;
};

/// The width of texts, in terminal columns.
inline constexpr std::size_t text_width = 80;

/// `text` wrapped at `text_width`, with the first line indented by `lead` columns and the others by
/// `hang`; ends in a newline.
std::string paragraph(std::string_view text, std::size_t lead = 0, std::size_t hang = 0);

/// A line with `left` at its start and `right` at its end, at least two spaces apart; ends in a
/// newline.
std::string both_ends(std::string_view left, std::string_view right);

/// `text` made safe (`printable`), then cut or padded with spaces to `width` terminal columns.
std::string pad(std::string_view text, std::size_t width);

}  // namespace slabtide
