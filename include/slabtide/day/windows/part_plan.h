#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/operation.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/band.h"

namespace slabtide {

/// The text shown for a time that does not happen within the hours computed.
inline constexpr std::string_view after_plan_words = "after the plan's end";

/// When an operation can be done. A time is absent if it does not happen before the plan's end. No
/// window closes before it opens: if the concrete is too stiff before it can be worked, the window
/// closes as it opens.
struct OperationWindow {
  Operation operation = Operation::stamp;
  std::optional<UtcTime> opens;          ///< when the first tenth of the area is ready
  std::optional<UtcTime> open_all_over;  ///< when nine tenths are
  std::optional<UtcTime> closes;         ///< when the first tenth is too stiff, or it is too late
  /// When nine tenths are too stiff: work that follows the setting can be done until then.
  std::optional<UtcTime> closed_all_over;
  /// When it was too stiff, if the window never opens.
  std::optional<UtcTime> stiff_by;
  /// When the sheen is off its first tenth, if that is no sooner than it closes: water stands on it
  /// for as long as it could be worked.
  std::optional<UtcTime> wet_until;
  std::string note;
  /// It opens with bleed water on some of it, which must be dragged off first.
  bool water_stands = false;
  bool still_bleeds = false;  ///< and a little more rises on some of it
  // How sure the times are, if the plan has bands (bands.h).
  std::optional<TimeBand> opens_band;
  std::optional<TimeBand> all_over_band;
  std::optional<TimeBand> closes_band;

  /// From opening to closing, at least 0; empty if either is missing.
  std::optional<double> minutes() const;
  /// True if it closes as it opens: there is no good time for the work.
  bool is_never() const;
};

/// When work that can be done from `ready` on opens in a part that has set all over at `final_set`:
/// nobody walks on, washes or seals concrete that has not set, even if its first tenth could bear
/// it. In seconds or instants; empty if it does not happen.
template <class Time>
std::optional<Time> held_until_set(Operation operation, const std::optional<Time>& ready,
                                   const std::optional<Time>& final_set) {
  if (operation < Operation::walk) return ready;
  if (!ready || !final_set) return std::nullopt;
  return std::max(*ready, *final_set);
}

/// Notes on a window on set concrete, which waits for no sheen, that water still stands on some of
/// it when it is open all over; any other note stays.
void note_standing_water(OperationWindow& window, const std::optional<UtcTime>& sheen_gone);

/// A part of a zone that behaves uniformly: the whole zone, a strip, or the border.
struct PartPlan {
  std::string id;    ///< as PlaceId::part
  std::string name;  ///< empty for a whole zone
  double area_m2 = 0.0;
  std::vector<std::size_t> cells;  ///< indices into ZoneRun::cells
  std::optional<UtcTime> sheen_gone;
  std::optional<UtcTime> initial_set;
  std::optional<UtcTime> final_set;
  std::optional<TimeBand> sheen_band;
  std::optional<TimeBand> initial_band;
  std::optional<TimeBand> final_band;
  std::vector<OperationWindow> windows;
  double peak_evaporation_kg_m2_h = 0.0;  ///< while plastic
  UtcTime peak_evaporation_at;
  double surface_peak_c = 0.0;
  UtcTime surface_peak_at;
  /// When it is dry on top although much bleeding is still to come.
  std::optional<UtcTime> early_sheen_at;
  std::optional<UtcTime> crust_at;
  double sunlit_fraction = 0.0;  ///< of the hours from placing to initial set

  const OperationWindow* window(Operation operation) const;
};

/// What is done on the days after: release agent, slurry or salt washed off, a sealer put on.
struct LateWork {
  bool exposed = false;  ///< the retarded paste washed off first
  bool washed = false;
  bool sealed = false;
};

/// The plan of the given cells of a zone for these operations on plastic concrete, and afterwards
/// for walking on it and for the late work.
PartPlan plan_part(std::string name, std::vector<std::size_t> cells, const ZoneRun& zone,
                   const std::vector<Operation>& operations, LateWork late, const PourRun& run,
                   const Practice& practice);

/// When the operation is possible in each cell, in seconds from the grid's start; one entry per
/// cell.
std::vector<std::optional<double>> ready_times_s(const ZoneRun& zone, Operation operation,
                                                 const PourRun& run, const Practice& practice);

/// The window for stripping one formed face.
OperationWindow plan_strip(const FaceRun& face, const PourRun& run, const Practice& practice);

}  // namespace slabtide
