#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/plan/stakes.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// The figures of a day by which choices are compared.
struct ChoiceFigures {
  std::optional<UtcTime> first_window;  ///< when the first main window of any zone opens
  std::optional<UtcTime> last_window;   ///< when the last main window closes
  double minutes_late = 0.0;            ///< of the finishing crew, in total
  double expected_late_min = 0.0;       ///< mean over the sampled days
  double bad_day_late_min = 0.0;        ///< on nine days out of ten it is no later than this
  std::optional<int> smallest_crew;     ///< that is never late; empty if none is
  double crew_hours = 0.0;              ///< time on site, over all of the crew that comes
  double peak_evaporation_kg_m2_h = 0.0;
  int early_sheens = 0;  ///< zones whose top dries before it has finished bleeding
  int crusts = 0;        ///< zones whose top stiffens before the concrete below it
  std::optional<UtcTime> last_finish;
  std::optional<double> daylight_left_min;  ///< from the last finish to sunset; negative after dark
  double dark_min = 0.0;  ///< of the finishing, from the first work to the last, without twilight
  std::optional<UtcTime> latest_saw;  ///< when the first of the zones that must be cut has to be
                                      ///< done
  bool saw_at_night = false;
  int stops = 0;
  int cautions = 0;
  int notes = 0;
  Judgement judgement;              ///< the verdict on this day, as its plan gives it
  Stakes stakes;                    ///< what the day's cautions put at stake
  std::vector<Caution> fears = {};  ///< the stops and cautions, without the notes
  /// The share of the sampled days on which any finish is lost (`CrewPlan::finish_lost_fraction`);
  /// empty without sampled days.
  std::optional<double> lost_fraction = std::nullopt;
  /// Likewise of each zone (`CrewPlan::zone_lost_fractions`).
  std::vector<double> zone_lost_fractions = {};
};

/// Sampled days, and the plan of the pour that was solved on them.
struct SampledDays {
  const DayPlan& plan;  ///< that they were sampled for
  const Ensemble& ensemble;
};

/// Without `drawn` only the day as planned is used; with it a finish that is lost too often counts
/// as in the plan (`with_bands`). For another pour than these days were sampled for, `own` are the
/// first of them, on which that pour was solved; without them its windows are only moved.
ChoiceFigures figures_of(const Job& job, const DayPlan& plan,
                         const std::optional<SampledDays>& drawn = std::nullopt,
                         const std::optional<SampledDays>& own = std::nullopt);

}  // namespace slabtide
