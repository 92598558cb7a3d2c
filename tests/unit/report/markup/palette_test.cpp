#include "report/markup/palette.h"

#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "report/markup/embedded_pages.h"

namespace slabtide {
namespace {

double channel(std::string_view colour, std::size_t which) {
  return std::stoi(std::string(colour.substr(1 + 2 * which, 2)), nullptr, 16) / 255.0;
}

/// Relative luminance of an sRGB colour. Source: W3C, WCAG 2.1 (2018), definition of relative
/// luminance. Status: published, from memory.
double luminance(std::string_view colour) {
  const auto linear = [](double c) {
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(channel(colour, 0)) + 0.7152 * linear(channel(colour, 1)) +
         0.0722 * linear(channel(colour, 2));
}

double contrast(std::string_view a, std::string_view b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

/// The value of a custom property the nth time it is set (0: light, 1: dark).
std::string property(const std::string& name, int nth) {
  const std::string css(embedded::page_palette_css());
  std::size_t at = css.find("--" + name + ":");
  for (int i = 0; i < nth; ++i) at = css.find("--" + name + ":", at + 1);
  REQUIRE(at != std::string::npos);
  return css.substr(css.find('#', at), 7);
}

TEST_CASE("text and lines stand out from the paper, light and dark") {
  // WCAG 2.1 AA: 4.5 for text (1.4.3), 3 for what graphics need to be understood (1.4.11).
  // Lowest observed: 7.0 for muted text, 4.0 for a line (both light, on the panel).
  for (int turn = 0; turn < 2; ++turn) {
    CAPTURE(turn);
    for (const std::string ground : {"paper", "panel"}) {
      CHECK(contrast(property("ink", turn), property(ground, turn)) > 7.0);
      CHECK(contrast(property("muted", turn), property(ground, turn)) > 4.5);
      for (std::size_t i = 0; i < line_class_count; ++i) {
        CAPTURE(line_class(i));
        CHECK(contrast(property(line_class(i), turn), property(ground, turn)) > 3.0);
      }
    }
  }
}

TEST_CASE("the classes of lines come round again") {
  CHECK(line_class(0) == "line-1");
  CHECK(line_class(5) == "line-6");
  CHECK(line_class(6) == "line-1");
}

}  // namespace
}  // namespace slabtide
