#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/day/uncertainty/column_events.h"
#include "slabtide/day/uncertainty/sampled_pour.h"

namespace slabtide {

/// The columns that represent a part: those where its first and its last tenth become ready.
struct PartColumns {
  std::size_t first = 0;  ///< index into DayModel's columns
  std::size_t last = 0;
};

/// The columns that represent a zone.
struct ZoneColumns {
  PartColumns whole;
  std::vector<PartColumns> parts;  ///< parallel to ZonePlan::parts
  std::optional<PartColumns> border;
  std::vector<std::size_t> faces;
  std::size_t saw_limit = 0;  ///< where the surface cools first, apart from a tenth of the area
};

/// Those of a zone's place by its id; of the whole zone where the plan that the columns were chosen
/// for has no such place.
PartColumns columns_of(std::string_view part_id, const ZonePlan& plan, const ZoneColumns& columns);

/// The events of each of the model's columns on one day.
using DayEvents = std::vector<ColumnEvents>;

/// A pour reduced to a few representative columns, so that it can be computed for many sampled
/// days. Suitable for how times change from one day to another, not for the times themselves.
class DayModel {
 public:
  /// `run` is the pour as described, and `shown` the one that `plan` was made from: the same, or
  /// that of another day. The references must outlive the model.
  DayModel(const Job& job, const PourRun& run, const PourRun& shown, const DayPlan& plan,
           const Practice& practice, const SampleScale& scale);
  DayModel(const Job& job, const PourRun& run, const DayPlan& plan, const Practice& practice,
           const SampleScale& scale)
      : DayModel(job, run, run, plan, practice, scale) {}

  /// From now on also computes the columns' surface temperature at this instant; returns its index
  /// in ColumnEvents::surface_c.
  std::size_t ask_surface(double at_s);

  Sample sample(const UncertainInputs& uncertain_inputs) const;
  DayEvents on(const UncertainInputs& uncertain_inputs) const;
  const std::vector<ZoneColumns>& zones() const { return zones_; }
  std::size_t columns() const { return set_.columns.size(); }
  const ColumnSet& set() const { return set_; }

 private:
  class Choosing;

  const Practice& practice_;
  SampleScale scale_;
  ColumnSet set_;
  std::vector<ColumnQuestions> questions_;
  std::vector<ZoneColumns> zones_;
};

/// How many days to sample, and how.
struct EnsembleSettings {
  std::size_t samples = 200;
  int threads = 0;  ///< 0: as many as the machine has; the result is the same for any number
  /// Called after each day computed, by one thread at a time; may be empty.
  std::function<void(std::size_t done)> progress;
};

/// More samples than this add nothing.
inline constexpr std::size_t max_samples = 10000;

/// Sampled days, and the day that the plan is for.
struct Ensemble {
  std::vector<ZoneColumns> zones;
  UncertainInputs central;  ///< of the day that the plan is for
  DayEvents planned;
  std::vector<UncertainInputs> uncertain_inputs;  ///< one entry per day
  std::vector<DayEvents> days;
  std::vector<double> weights;  ///< of the days; sum 1
};

/// Computes the events of the days.
std::vector<DayEvents> solve_days(const DayModel& model,
                                  const std::vector<UncertainInputs>& uncertain_inputs,
                                  const EnsembleSettings& settings);

/// The sampled days before any observation, with equal weights.
Ensemble sample_days(const DayModel& model, const EnsembleSettings& settings);

/// The first so many of the days, evenly weighted.
Ensemble first_days(const Ensemble& ensemble, std::size_t count);

/// Samples of how the planned pour may turn out.
Ensemble sampled_days(const PlannedPour& pour, const EnsembleSettings& settings);

/// As many days as are drawn for this plan where nobody says how many: `usual`, but fewer (at least
/// `min_samples`) where so many columns stand for its zones and step faces that more than
/// `max_sampled_columns` would be solved, so that a plan takes no longer than one waits for it.
std::size_t samples_for(const DayPlan& plan, std::size_t usual);
inline constexpr std::size_t max_sampled_columns = 15000;
inline constexpr std::size_t min_samples = 20;

}  // namespace slabtide
