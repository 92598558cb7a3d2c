#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/job/model/mix.h"

// What the contractor can still choose the day before: the order, the crew, the saw, and the
// changes to compare.

namespace slabtide {

/// Early-entry saws cut dry, soon after final set; wet saws later and deeper.
enum class SawKind { early_entry, wet };
/// What keeps the slab moist or warm.
enum class CuringKind { none, film, plastic, blanket };

/// Admixtures for one load only, such as retarder in the last.
struct LoadNote {
  int number = 1;  ///< the loads count from 1
  std::vector<Admixture> admixtures;
};

/// What is asked of the plant.
struct Order {
  double allowance_fraction = 0.07;         ///< added to the neat volume
  double low_base_m = 0.00635;              ///< the report states what a base this much too low
                                            ///< would add (1/4 in)
  double load_size_m3 = 7.646;              ///< 10 yd3
  double short_load_m3 = 3.058;             ///< 4 yd3: the plant charges for smaller loads
  double discharge_limit_min = 90.0;        ///< from batching to empty truck
  std::optional<double> truck_spacing_min;  ///< between arrivals; if empty, trucks come as fast as
                                            ///< they unload
  std::vector<LoadNote> loads;
};

/// One of the finishing crew who is told apart from the others. Hours are those of the local clock,
/// in minutes of the day, and count on every day of the job.
struct Hand {
  std::string name;
  double pace = 1.0;            ///< work done over that of a usual hand in the same time
  std::optional<int> from_min;  ///< absent: from the crew's arrival
  std::optional<int> to_min;    ///< absent: to the end; before `from_min`: over midnight
  bool simple_work = false;     ///< a helper, who does nothing that takes a finisher
};

/// The finishing crew.
struct Crew {
  int finishers = 4;
  /// Those told apart: the first of the finishers. The others are usual hands who stay all day.
  std::vector<Hand> hands;
  double arrive_before_min = 60.0;  ///< on site before the first work, for forms, base and tools
};

/// A zone that gets a truck of its own, this long after the concrete before it is placed.
struct OwnTruck {
  std::string zone;
  double wait_min = 0.0;
};

/// A change to be compared with the job as it stands. Absent fields are unchanged.
struct OptionNote {
  std::string name;
  std::optional<double> start_shift_min;
  std::optional<int> finishers;
  std::optional<std::vector<Admixture>> admixtures;  ///< in every load
  /// With `admixtures`: only in this many of the last loads.
  std::optional<int> last_loads;
  std::vector<std::string> admixture_zones;  ///< with `admixtures`: only in these zones
  std::vector<std::string> placing_sequence;
  std::vector<std::string> shaded_zones;
  std::optional<double> wind_ratio;
  std::vector<SawKind> saws;
  std::vector<LoadNote> loads;  ///< these loads' own admixtures
  std::optional<double> load_size_m3;
  std::optional<double> truck_spacing_min;
  std::optional<OwnTruck> own_truck;
  std::optional<double> concrete_c;  ///< at discharge
  std::optional<CuringKind> curing;
  std::optional<double> curing_blanket_m2k_w;  ///< with blankets, of them
  std::optional<bool> evaporation_film;
};

}  // namespace slabtide
