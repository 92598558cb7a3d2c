#pragma once

#include "slabtide/job/order_notes.h"
#include "table_reader.h"

namespace slabtide {

/// The [order] table.
Order read_order(TableReader& table);

/// The [crew] table.
Crew read_crew(TableReader& table);

}  // namespace slabtide
