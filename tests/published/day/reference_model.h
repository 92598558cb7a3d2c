#pragma once

#include <functional>
#include <vector>

#include "slabtide/slab/column/column.h"

// A second model of a column, written from the headers' formulas and none of the project's code:
// its own cells, surface balance, drying, bleeding, ageing and stress, in time by SUNDIALS' CVODE.
// It holds at sea level. Of the program it takes what a column is solved from.

namespace slabtide::test {

/// What a reference column goes through, an entry a minute.
struct ReferenceHistory {
  std::vector<double> time_s;
  std::vector<double> surface_c;
  std::vector<double> mean_c;
  std::vector<double> gradient_c;
  std::vector<double> resistance_work_psi;
  std::vector<double> resistance_middle_psi;
  std::vector<double> set_age_middle_h;
  std::vector<double> strength_psi;
  std::vector<double> bleed_water_kg_m2;
  std::vector<double> evaporation_kg_m2_h;
  std::vector<double> depth_m;  ///< of the cells below the slab's top
  std::vector<std::vector<double>> cells_c;
};

/// A temperature by depth.
using Profile = std::function<double(double depth_m)>;

/// `below` is the start's temperature by depth under the slab.
ReferenceHistory reference_column(const ColumnCase& column, const SiteWeather& weather,
                                  const Profile& below, double end_s);

/// Stress over strength of a piece tied to a structure, an entry a minute; the sum of every
/// minute's stress with what is left of each.
std::vector<double> reference_tied_ratio(const ReferenceHistory& history, const MixModel& mix,
                                         double length_m, double thickness_m);

}  // namespace slabtide::test
