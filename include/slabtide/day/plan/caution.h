#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// `stop` means do not pour like this, `caution` take care, `note` be aware of it.
enum class CautionLevel { note, caution, stop };

/// The id used in the JSON: "caution".
std::string_view caution_level_id(CautionLevel level);

/// Something to watch for, with its time and the source of the rule.
struct Caution {
  std::string code;
  std::string title;  ///< two or three words for a verdict: "fast drying"
  CautionLevel level = CautionLevel::caution;
  std::string zone;  ///< empty for the whole job
  std::optional<UtcTime> at;
  std::optional<UtcTime> until;  ///< if it ends at a known time
  std::string text;              ///< what, and what to do about it
  std::string source;
};

}  // namespace slabtide
