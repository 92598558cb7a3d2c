#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "cli/line/command_line.h"
#include "core/typed_place.h"
#include "slabtide/core/time_zone.h"

namespace slabtide {

/// A job to start from: one of the two that the program carries, with what has been told put in.
///
/// Each `put_...` takes a value as it is typed and returns what is wrong with it, else an empty
/// text. The place comes before the day, which is of its clock.
class StarterJob {
 public:
  /// `line` gives --now.
  explicit StarterJob(const ParsedLine& line);

  /// Starts from the short job; called before anything is put in.
  void shorten();

  std::string put_place(const std::string& words);
  std::string put_day(const std::string& words);
  /// These four need the short job.
  std::string put_finish(const std::string& word);
  /// "16 x 12": along the house and out from it.
  std::string put_size(const std::string& words);
  /// The side open to the sun, with the house across from it; "open" for no house.
  std::string put_sun_side(const std::string& word);

  /// The weather comes from this file, as the job's folder has it.
  void put_forecast(const std::string& path);

  /// The file's text, with the slab and its house drawn.
  std::string text() const;
  /// What was assumed, and what is left of the example: sentences, one a line.
  std::string remarks() const;
  /// For a place that is probably mistyped; else empty.
  const std::string& warning() const { return warning_; }

 private:
  void draw(std::string& text) const;

  const ParsedLine& line_;
  std::string text_;
  bool short_ = false;
  TimeZone zone_;
  std::string zone_name_;  ///< where the place gave it
  std::string warning_;
  double along_ft_ = 16.0;
  double out_ft_ = 12.0;
  std::string sun_side_ = "south";
  bool has_forecast_ = false;
};

}  // namespace slabtide
