#pragma once

#include <span>
#include <string_view>

#include "slabtide/core/time_zone.h"

namespace slabtide {

/// A time zone carried inside: its name and the bytes of its file (TZif).
struct PackedZone {
  std::string_view name;
  std::string_view bytes;
};

/// Loads from these, which outlive the loader; they rise by name.
TimeZoneLoader load_from(std::span<const PackedZone> zones);

}  // namespace slabtide
