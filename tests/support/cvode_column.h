#pragma once

#include <array>

#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide::test {

/// Print at the working depth, then initial and final set at mid-depth, in seconds from the grid's
/// start.
using SetTimes = std::array<double, 3>;

/// Settings for SUNDIALS' CVODE.
struct CvodeSettings {
  double relative = 1.0e-6;
  double absolute = 1.0e-6;
  double longest_step_s = 0.0;  ///< 0: unlimited
};

/// Solves the same column with CVODE (variable-order BDF, its own Newton and error control): the
/// same modes, surface, heat and set ages, to the end of the weather. It does not bleed while it
/// dries: all bleed water has come by then. Error: std::runtime_error if CVODE fails.
SetTimes cvode_set_times(const ColumnCase& column, const SiteWeather& weather,
                         const SolverSettings& points, const CvodeSettings& settings);

}  // namespace slabtide::test
