#pragma once

#include <array>

#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide::bench {

/// Print at the working depth, then initial and final set at mid-depth; seconds from the
/// grid's start.
using SetTimes = std::array<double, 3>;

/// How SUNDIALS' CVODE is asked to go about it.
struct CvodeSettings {
  double relative = 1.0e-6;
  double absolute = 1.0e-6;
  double longest_step_s = 0.0;  ///< 0: as it likes
};

/// The same column handed to CVODE: the same cells, surface, heat and set ages, to the end of
/// the weather. Made to be quick: variable-order BDF, a banded Newton matrix in the order of
/// depth, and the surface found by Newton's method from where it was last.
/// Error: std::runtime_error where CVODE gives up.
SetTimes cvode_set_times(const ColumnCase& column, const SiteWeather& weather,
                         const SolverSettings& cells, const CvodeSettings& settings);

}  // namespace slabtide::bench
