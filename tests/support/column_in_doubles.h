#pragma once

#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide::test {

/// A column by the very steps of the columns' core, in double precision and with the C library's
/// exponential and logarithm: what single precision and the core's own are held against.
ColumnSolution solve_in_doubles(const ColumnCase& column, const SiteWeather& weather,
                                const SolverSettings& settings);

}  // namespace slabtide::test
