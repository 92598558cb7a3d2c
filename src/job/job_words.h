#pragma once

#include <array>

#include "slabtide/job/order_notes.h"
#include "table_reader.h"

// Words and ranges that more than one table of the job file takes.

namespace slabtide {

inline constexpr auto saw_kinds =
    std::to_array<Word<SawKind>>({{"early-entry", SawKind::early_entry}, {"wet", SawKind::wet}});

/// Still air behind walls to a hilltop's speed-up: wind at the slab over that at 10 m.
inline constexpr Range wind_ratios{0.05, 1.2};

/// Hands that one pour has use for.
inline constexpr Range crew_sizes{1.0, 60.0};

}  // namespace slabtide
