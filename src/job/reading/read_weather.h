#pragma once

#include "job/toml/table_reader.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The [weather] table: a forecast's file, or a typed day.
WeatherChoice read_weather(TableReader& table);

}  // namespace slabtide
