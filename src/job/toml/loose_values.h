#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/diagnostic.h"

// TOML as people type it: values that TOML would refuse for want of quotation marks.

namespace slabtide {

/// A TOML text in which every bare value that TOML has no form for (8/3/2026, 4'6", 4 ft, 8:00,
/// pump) stands in quotation marks, for the readers of times and quantities to judge; and values in
/// typographic quotation marks stand in plain ones.
struct LooseText {
  std::string text;

  /// Where a position of `text` stands in what was given. Columns count code points.
  SourcePosition original(SourcePosition position) const;

  /// A character that was put in, before the given column of `text`.
  struct Added {
    SourcePosition where;
  };
  std::vector<Added> added;
};

LooseText quote_loose_values(std::string_view text);

}  // namespace slabtide
