#pragma once

#include <array>

#include "slabtide/job/model/order_notes.h"
#include "table_reader.h"

// Words that several tables of the job file accept.

namespace slabtide {

inline constexpr auto saw_kinds =
    std::to_array<Word<SawKind>>({{"early-entry", SawKind::early_entry}, {"wet", SawKind::wet}});

}  // namespace slabtide
