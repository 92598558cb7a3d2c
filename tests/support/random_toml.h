#pragma once

#include <array>
#include <string>
#include <string_view>

#include "support/byte_source.h"

namespace slabtide::test {

/// Writes the tables of a random job, with keys in US or metric units and, if slips are wanted, an
/// occasional mistake.
class RandomToml {
 public:
  RandomToml(ByteSource& bytes, bool slips) : bytes_(bytes), slips_(slips), si_(bytes.one_in(4)) {}

  ByteSource& bytes() { return bytes_; }
  std::string take() { return std::move(text_); }

  void line(std::string_view line);
  /// A key as written and its value as TOML.
  void raw(std::string_view key, std::string_view value);
  void word(std::string_view key, std::string_view value);
  void number(std::string_view key, double value);
  void whole(std::string_view key, int value);
  void yes_no(std::string_view key, bool value);

  void units() { word("units", si_ ? "si" : "us"); }
  void length(std::string_view key, double ft);
  void thickness(std::string_view key, double in);
  void temperature(std::string_view key, double f);
  void wind(std::string_view key, double mph);
  void content(std::string_view key, double lb_yd3);
  void strength(std::string_view key, double psi);
  void dose(std::string_view key, double floz_cwt);
  void volume(std::string_view key, double yd3);
  void percent(std::string_view key, double percent);
  void insulation(std::string_view key, double r_us);

  /// "[1, 2]" in the file's unit of length.
  std::string point(double x_ft, double y_ft);
  /// The text as a TOML string.
  static std::string quoted(std::string_view text);

 private:
  struct Unit {
    std::string_view us_suffix;
    std::string_view si_suffix;
    double (*si_from_us)(double);
  };
  void quantity(std::string_view key, double us, const Unit& unit);
  std::string slip(std::string value);

  ByteSource& bytes_;
  bool slips_;
  bool si_;
  std::string text_;
};

}  // namespace slabtide::test
