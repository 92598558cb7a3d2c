#pragma once

#include <string>
#include <string_view>

namespace slabtide {

/// The widest that texts get, in terminal columns, and the narrowest that they respect.
inline constexpr std::size_t text_width = 80;
inline constexpr std::size_t min_text_width = 60;

/// How text is styled for its destination: colour only on a terminal, and how wide that is.
struct TextStyle {
  bool colour = false;
  std::size_t width = text_width;  ///< terminal columns

  std::string heading(std::string_view text) const;
  std::string warning(std::string_view text) const;
  /// A whole report, ready to print: names in it, which come from outside, are made safe by
  /// `printable_lines`; this style's own colours are kept.
  std::string finished(std::string_view report) const;
  /// `text` wrapped at the width, with the first line indented by `lead` columns and the others by
  /// `hang`; ends in a newline.
  std::string paragraph(std::string_view text, std::size_t lead = 0, std::size_t hang = 0) const;
  /// `text` with `label` before it in its own column of `lead` to `hang`; ends in a newline.
  std::string entry(std::string_view label, std::string_view text, std::size_t lead,
                    std::size_t hang) const;
  /// A line with `left` at its start and `right` at its end; where they do not fit on one at least
  /// two spaces apart, `right` and whatever of `left` is too long stand on indented lines below.
  /// Ends in a newline.
  std::string both_ends(std::string_view left, std::string_view right) const;
  /// A name as a heading, and what is told of it behind it; on an indented line below where both do
  /// not fit on one. Ends in a newline.
  std::string titled(std::string_view name, std::string_view told) const;
};

/// A name that fits, or its beginning and end with an ellipsis between them, which tell apart what
/// begins alike.
std::string shortened(std::string_view name, std::size_t width);

/// `text` made safe (`printable`), then cut or padded with spaces to `width` terminal columns.
std::string pad(std::string_view text, std::size_t width);

}  // namespace slabtide
