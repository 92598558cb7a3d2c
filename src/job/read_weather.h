#pragma once

#include "slabtide/job/job.h"
#include "table_reader.h"

namespace slabtide {

/// The [weather] table: a forecast's file, or a typed day.
WeatherChoice read_weather(TableReader& table);

}  // namespace slabtide
