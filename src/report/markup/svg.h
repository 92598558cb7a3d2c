#pragma once

#include <string>
#include <string_view>

// Markup (HTML, and SVG inside it) built from elements. Text and attribute values are escaped here,
// so that nothing a user wrote can become markup; numbers are short and the same in every locale.

namespace slabtide {

/// `text` made safe to show (`printable_lines`), with & < > " ' escaped. Times of day and spans of
/// them ("8:10–9:25 AM") are kept on one line, by no-break spaces and a word joiner.
std::string escape_markup(std::string_view text);

/// At most `decimals` (0 to 4) decimals, without trailing zeros, never "-0": "12", "0.5", "-3.25".
/// Error: std::invalid_argument if not finite.
std::string short_number(double value, int decimals = 1);

/// An element with its attributes and content.
///
///     Element("g").set("class", "axis").add(Element("text").set("x", 4.5).text("noon")).str()
class Element {
 public:
  explicit Element(std::string_view name);

  Element& set(std::string_view attribute, std::string_view value);
  Element& set(std::string_view attribute, const char* value);
  Element& set(std::string_view attribute, double value);
  /// Adds an attribute without a value, such as `hidden` or `checked`.
  Element& mark(std::string_view attribute);

  Element& text(std::string_view text);
  Element& add(const Element& child);
  /// Adds markup that has already been escaped.
  Element& add_markup(std::string_view markup);

  bool empty() const { return body_.empty(); }
  std::string str() const;

 private:
  std::string name_;
  std::string attributes_;
  std::string body_;
};

/// The data of a path or the points of a polygon, added one after another.
class PathData {
 public:
  PathData& move_to(double x, double y);
  PathData& line_to(double x, double y);
  PathData& close();

  bool empty() const { return data_.empty(); }
  const std::string& str() const { return data_; }

 private:
  std::string data_;
};

}  // namespace slabtide
