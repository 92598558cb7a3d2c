#pragma once

#include "job/toml/table_reader.h"
#include "slabtide/job/model/order_notes.h"

namespace slabtide {

/// The [order] table.
Order read_order(TableReader& table);

}  // namespace slabtide
