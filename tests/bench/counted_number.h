#pragma once

#include <cstddef>
#include <cstdint>

#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide::bench {

/// Floating-point operations that solving one column takes: additions, multiplications, divisions
/// and roots, counted by running the same formulas over a number that counts. An exponential
/// counts as the 34 operations of Highway's polynomial, a logarithm as its 27; comparing and
/// choosing as none.
std::uint64_t operations_of_column(const ColumnCase& column, const SiteWeather& weather,
                                   const SolverSettings& settings);

}  // namespace slabtide::bench
