#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "core/utf8.h"
#include "job/model/limits.h"
#include "slabtide/core/civil_time.h"

// Checks of one field, named by its path. Each throws std::invalid_argument with a message that
// begins with the path.

namespace slabtide {

/// The path of a value within the thing checked: "zone[2]", and inside it "zone[2].thickness_m".
class FieldPath {
 public:
  explicit FieldPath(std::string path = {}) : path_(std::move(path)) {}

  FieldPath at(std::string_view field) const {
    return FieldPath(path_.empty() ? std::string(field) : fmt::format("{}.{}", path_, field));
  }
  FieldPath at(std::string_view field, std::size_t index) const {
    return at(fmt::format("{}[{}]", field, index + 1));
  }

  [[noreturn]] void refuse(std::string_view why) const {
    throw std::invalid_argument(fmt::format("{}: {}", path_, why));
  }
  void require(bool holds, std::string_view why) const {
    if (!holds) refuse(why);
  }
  void in_range(double value, const Range& range) const {
    if (range.holds(value)) return;
    refuse(fmt::format("got {}, expected {:.6g} to {:.6g}", value, range.low, range.high));
  }
  void in_range(const std::optional<double>& value, const Range& range) const {
    if (value) in_range(*value, range);
  }
  void is_text(std::string_view text) const {
    while (!text.empty()) {
      const Utf8Char character = first_utf8(text);
      require(character.valid, "is not UTF-8");
      text.remove_prefix(character.bytes);
    }
  }
  void is_time(UtcTime time) const {
    require(!time.is_special(), "is not a date and time");
    in_range(static_cast<double>(time.date().year()),
             {limits::years.low - 1.0, limits::years.high + 1.0});
  }
  /// For an enumeration whose last value is `last`.
  template <class Enum>
  void one_of(Enum value, Enum last) const {
    require(static_cast<int>(value) >= 0 && static_cast<int>(value) <= static_cast<int>(last),
            "is no such choice");
  }

 private:
  std::string path_;
};

}  // namespace slabtide
