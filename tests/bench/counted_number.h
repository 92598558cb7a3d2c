#pragma once

#include <cstddef>
#include <cstdint>

#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide::bench {

/// Floating-point operations needed to solve one column: additions, multiplications, divisions and
/// roots, counted by running the same formulas with a number type that counts. An exponential
/// counts as the 20 operations of lane_math-inl.h and a logarithm as its 28; comparisons, limits
/// and selections count as none.
std::uint64_t operations_of_column(const ColumnCase& column, const SiteWeather& weather,
                                   const SolverSettings& settings);

}  // namespace slabtide::bench
