#include "svg.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"

namespace slabtide {

namespace {

/// HTML elements that have no end tag.
constexpr std::array<std::string_view, 6> without_end{"br", "col", "hr", "img", "input", "meta"};
/// SVG shapes, which may be self-closing within HTML.
constexpr std::array<std::string_view, 8> shapes{"circle",  "ellipse",  "line", "path",
                                                 "polygon", "polyline", "rect", "use"};

/// Forbids a line break where it stands (Unicode Standard Annex #14, class WJ).
constexpr std::string_view word_joiner = "\u2060";

template <std::size_t count>
bool is_one_of(const std::array<std::string_view, count>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

std::string escape_markup(std::string_view text) {
  std::string escaped;
  escaped.reserve(text.size());
  const std::string shown = printable_lines(text);
  for (std::size_t i = 0; i < shown.size(); ++i) {
    const char c = shown[i];
    if (is_within_time(shown, i)) {
      escaped += "\u00a0";
    } else if (is_span_dash(shown, i)) {
      escaped.append(en_dash).append(word_joiner);
      i += en_dash.size() - 1;
    } else if (c == '&') {
      escaped += "&amp;";
    } else if (c == '<') {
      escaped += "&lt;";
    } else if (c == '>') {
      escaped += "&gt;";
    } else if (c == '"') {
      escaped += "&quot;";
    } else if (c == '\'') {
      escaped += "&#39;";
    } else {
      escaped += c;
    }
  }
  return escaped;
}

std::string short_number(double value, int decimals) {
  constexpr int max_decimals = 4;
  if (!std::isfinite(value) || decimals < 0 || decimals > max_decimals) {
    throw std::invalid_argument("short_number: not a number for a picture");
  }
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

Element::Element(std::string_view name) : name_(name) {}

Element& Element::set(std::string_view attribute, std::string_view value) {
  attributes_ += fmt::format(" {}=\"{}\"", attribute, escape_markup(value));
  return *this;
}

Element& Element::set(std::string_view attribute, const char* value) {
  return set(attribute, std::string_view(value));
}

Element& Element::set(std::string_view attribute, double value) {
  return set(attribute, std::string_view(short_number(value)));
}

Element& Element::mark(std::string_view attribute) {
  attributes_ += fmt::format(" {}", attribute);
  return *this;
}

Element& Element::text(std::string_view text) {
  body_ += escape_markup(text);
  return *this;
}

Element& Element::add(const Element& child) {
  body_ += child.str();
  return *this;
}

Element& Element::add_markup(std::string_view markup) {
  body_ += markup;
  return *this;
}

std::string Element::str() const {
  if (body_.empty() && is_one_of(shapes, name_)) return fmt::format("<{}{}/>", name_, attributes_);
  if (is_one_of(without_end, name_)) return fmt::format("<{}{}>", name_, attributes_);
  return fmt::format("<{}{}>{}</{}>", name_, attributes_, body_, name_);
}

PathData& PathData::move_to(double x, double y) {
  data_ += fmt::format("M{} {}", short_number(x), short_number(y));
  return *this;
}

PathData& PathData::line_to(double x, double y) {
  data_ += fmt::format("L{} {}", short_number(x), short_number(y));
  return *this;
}

PathData& PathData::close() {
  data_ += 'Z';
  return *this;
}

}  // namespace slabtide
