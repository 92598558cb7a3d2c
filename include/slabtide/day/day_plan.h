#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/caution.h"
#include "slabtide/day/operation.h"
#include "slabtide/day/pour_run.h"
#include "slabtide/day/practice.h"
#include "slabtide/weather/sun.h"

namespace slabtide {

/// When an operation can be done. A time is absent where it does not come before the
/// forecast ends.
struct OperationWindow {
  Operation operation = Operation::stamp;
  std::optional<UtcTime> opens;          ///< the first tenth of the area is ready
  std::optional<UtcTime> open_all_over;  ///< nine tenths are
  std::optional<UtcTime> closes;         ///< the first tenth is too stiff, or it is too late
  std::string note;
};

/// A part of a zone that behaves as one: the whole of it, a strip, the border.
struct PartPlan {
  std::string name;  ///< empty for a whole zone
  double area_m2 = 0.0;
  std::vector<std::size_t> cells;  ///< indices into ZoneRun::cells
  std::optional<UtcTime> sheen_gone;
  std::optional<UtcTime> initial_set;
  std::optional<UtcTime> final_set;
  std::vector<OperationWindow> windows;
  double peak_evaporation_kg_m2_h = 0.0;  ///< while plastic
  UtcTime peak_evaporation_at;
  double surface_peak_c = 0.0;
  UtcTime surface_peak_at;
  /// Dry on top while much bleeding is still to come.
  std::optional<UtcTime> early_sheen_at;
  std::optional<UtcTime> crust_at;
  double sunlit_share = 0.0;  ///< of the hours from placing to initial set
};

/// When the saw can start and must be done.
struct SawPlan {
  SawKind kind = SawKind::early_entry;
  bool on_hand = false;
  std::optional<UtcTime> opens;
  std::optional<UtcTime> open_all_over;
  std::optional<UtcTime> stress_limit;   ///< stress reaches half the tensile strength
  std::optional<UtcTime> stress_late;    ///< and seven tenths
  std::optional<UtcTime> surface_limit;  ///< surface 8.3 K (15 °F) under its peak
  std::optional<UtcTime> latest;         ///< the earlier of the two limits: be done by then
  double depth_m = 0.0;
  bool too_late = false;  ///< opens only after `latest`
};

struct FacePlan {
  std::string name;
  std::optional<double> facing_deg;
  OperationWindow strip;
};

struct ZonePlan {
  std::string name;
  double area_m2 = 0.0;
  double volume_m3 = 0.0;
  double uncut_length_m = 0.0;
  ZonePlacing placed;
  PartPlan whole;               ///< the field all together
  std::vector<PartPlan> parts;  ///< empty where the zone behaves as one
  std::optional<PartPlan> border;
  std::vector<FacePlan> faces;
  std::vector<SawPlan> saws;  ///< early entry and wet
  std::string working_order;  ///< how to work through it; empty where it behaves as one
};

/// The tightest window of the day.
struct Tightest {
  std::string zone;
  std::string part;
  Operation operation = Operation::stamp;
  double minutes = 0.0;
};

struct DayPlan {
  SunTimes sun;
  std::vector<ZonePlan> zones;  ///< in the order of job.zones
  std::optional<Tightest> tightest;
  std::vector<Caution> cautions;
  std::vector<std::string> assumptions;
};

DayPlan plan_day(const Job& job, const PourRun& run, const Practice& practice);

}  // namespace slabtide
