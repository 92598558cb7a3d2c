#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/frost_risk.h"
#include "slabtide/day/windows/part_plan.h"
#include "slabtide/day/windows/saw_plan.h"
#include "slabtide/day/windows/touch.h"

namespace slabtide {

/// A formed face and when its form comes off.
struct FacePlan {
  std::string id;  ///< as PlaceId::part
  std::string name;
  std::optional<double> facing_deg;
  OperationWindow strip;
};

/// All the windows of one zone.
struct ZonePlan {
  std::string name;
  double area_m2 = 0.0;
  double volume_m3 = 0.0;
  double uncut_length_m = 0.0;
  ZonePlacing placed;
  PartPlan whole;               ///< the whole field
  std::vector<PartPlan> parts;  ///< empty if the zone behaves uniformly
  std::optional<PartPlan> border;
  std::vector<FacePlan> faces;
  std::vector<SawPlan> saws;     ///< early entry and wet; none where nothing is cut
  std::vector<PartTouch> touch;  ///< of the parts or the whole field, and of the border
  FrostRisk frost;
  std::string working_order;  ///< how to work through it; empty if it behaves uniformly

  /// The whole, a part or the border by its id; null for a face, and for what the plan does not
  /// have.
  const PartPlan* part(std::string_view id) const;
  /// The id of what is called so, by its id or its name; empty where nothing is: the whole.
  std::string part_id(std::string_view called) const;
  /// The window of work after setting: the field's, or the border's where the field has none; null
  /// where neither has it.
  const OperationWindow* late_window(Operation operation) const;
  /// True if the field or the border is washed off to expose its aggregate.
  bool is_exposed() const;
  /// True if there is powder or salt to wash off the field or the border.
  bool is_washed() const;
  /// True if a sealer goes onto the field or the border.
  bool is_sealed() const;
  /// When field and border have both set all over; empty if that is after the plan's end.
  std::optional<UtcTime> final_set() const;
  /// When both field and border are ready for work after setting (walking, washing, sealing). One
  /// that is not washed may get wet as soon as it can be walked on. Empty if that is after the
  /// plan's end.
  std::optional<UtcTime> opens_after_set(Operation operation) const;
};

/// The plan of one zone: as a whole, by its parts if they differ, its border and its faces.
ZonePlan plan_zone(const Zone& zone, const ZoneRun& zone_run, const Job& job, const PourRun& run,
                   const Practice& practice);

}  // namespace slabtide
