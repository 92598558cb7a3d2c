#pragma once

#include "job/toml/table_reader.h"

namespace slabtide {

/// The table `prices` of a job file. Every key may be left out; the currency is then $ in a file in
/// US units, and unnamed in a metric one.
Prices read_prices(TableReader& table);

}  // namespace slabtide
