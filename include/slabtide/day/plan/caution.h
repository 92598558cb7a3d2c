#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// `stop` means do not pour like this, `caution` take care, `note` be aware of it.
enum class CautionLevel { note, caution, stop };

/// The id used in the JSON: "caution".
std::string_view caution_level_id(CautionLevel level);

/// What is lost where the warning is not heeded, the worst first.
enum class Loss { people, slab, finish, crack, money, comfort };

inline constexpr std::size_t loss_count = 6;  ///< of Loss

/// The id used in the JSON: "finish".
std::string_view loss_id(Loss loss);

/// What is at stake in a caution of this code; ours.
/// Error: std::invalid_argument for a code that no rule gives.
Loss loss_of(std::string_view code);

/// A slab or finish that may be lost on this part of the days stops the pour: one in three (ours).
inline constexpr double lost_too_often_fraction = 1.0 / 3.0;

/// Something to watch for, with its time and the source of the rule.
struct Caution {
  std::string code;
  std::string title;  ///< two or three words for a verdict: "fast drying"
  CautionLevel level = CautionLevel::caution;
  Loss loss = Loss::comfort;
  std::string zone;  ///< empty for the whole job
  std::optional<UtcTime> at;
  std::optional<UtcTime> until;  ///< if it ends at a known time
  std::string text;              ///< what, and what to do about it
  std::string source;
  /// Which of several alike in one zone, or of the whole job: "broom", "load 2"; empty where there
  /// is but one.
  std::string what = {};
  /// Of a window that is short, which `at` opens: how long it is.
  std::optional<double> window_min = std::nullopt;
};

}  // namespace slabtide
