#pragma once

#include <string>
#include <string_view>

namespace slabtide {

/// How text is dressed for where it goes: colour only on a terminal.
struct TextStyle {
  bool colour = false;

  std::string heading(std::string_view text) const;
  std::string warning(std::string_view text) const;
  /// A whole report as it goes out: names in it, which came from outside, shown by
  /// `printable_lines`, this style's own colours left.
  std::string finished(std::string_view report) const;
};

/// Columns of a terminal that a text keeps to.
inline constexpr std::size_t text_width = 80;

/// `text` wrapped at `text_width`, its first line `lead` columns in and the others `hang`;
/// ends in a newline.
std::string paragraph(std::string_view text, std::size_t lead = 0, std::size_t hang = 0);

/// A line with `left` at its start and `right` at its end, at least two spaces between; ends in
/// a newline.
std::string both_ends(std::string_view left, std::string_view right);

/// `text` as it is shown (`printable`), cut or filled with spaces to `width` terminal columns.
std::string pad(std::string_view text, std::size_t width);

}  // namespace slabtide
