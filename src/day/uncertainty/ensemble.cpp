#include "slabtide/day/uncertainty/ensemble.h"

#include <algorithm>
#include <mutex>
#include <type_traits>

#include "core/parallel.h"
#include "core/rounded.h"
#include "day/geometry/corners.h"

namespace slabtide {

/// Chooses the columns that represent the parts of a plan, without duplicates within a zone.
class DayModel::Choosing {
 public:
  Choosing(const Job& job, const PourRun& run, const Practice& practice)
      : job_(job), run_(run), practice_(practice) {}

  ZoneColumns choose(std::size_t zone, const ZonePlan& plan) {
    const Zone& described = job_.zones[zone];
    begin_zone(zone);
    ZoneColumns chosen;
    const Operation main = main_operation(described.finish);
    chosen.whole = of_part(plan.whole, main);
    for (const PartPlan& part : plan.parts) chosen.parts.push_back(of_part(part, main));
    if (plan.border) {
      chosen.border = of_part(*plan.border, main_operation(described.border->finish));
    }
    chosen.saw_limit = first_to_cool(plan.whole);
    const StressCase piece{uncut_length_m(described), described.thickness_m, described.tied,
                           !re_entrant_corners(described.outline).empty()};
    for (const std::size_t column : {chosen.saw_limit, chosen.whole.first})
      questions[column].cracks = piece;
    for (const FaceRun& face : run_.zones[zone].faces) chosen.faces.push_back(of_face(face));
    return chosen;
  }

  std::vector<std::size_t> columns;  ///< of the run
  std::vector<ColumnQuestions> questions;

 private:
  void begin_zone(std::size_t zone) {
    zone_ = &run_.zones[zone];
    zone_begins_ = columns.size();
    const Zone& described = job_.zones[zone];
    asked_ = {};
    asked_.operations = operations_of(described.finish);
    if (described.border) {
      const std::vector<Operation> more = operations_of(described.border->finish);
      asked_.operations.insert(asked_.operations.end(), more.begin(), more.end());
    }
    asked_.operations.push_back(Operation::tooled_joint);
    std::sort(asked_.operations.begin(), asked_.operations.end());
    asked_.operations.erase(std::unique(asked_.operations.begin(), asked_.operations.end()),
                            asked_.operations.end());
    asked_.next_day = true;
    asked_.aggregate = job_.mix.aggregate;
  }

  using CellTimes = std::vector<std::optional<double>>;  // one per cell of the zone

  PartColumns of_part(const PartPlan& part, Operation main) {
    CellTimes ready(zone_->cells.size());
    for (const std::size_t i : part.cells) {
      ready[i] = cell_window(history(i), practice_.window(main), practice_).opens_s;
    }
    return {at_fraction(part.cells, ready, practice_.cells.first_fraction),
            at_fraction(part.cells, ready, practice_.cells.all_over_fraction)};
  }

  std::size_t first_to_cool(const PartPlan& part) {
    CellTimes cool(zone_->cells.size());
    for (const std::size_t i : part.cells) cool[i] = surface_fallen_s(history(i), practice_);
    return at_fraction(part.cells, cool, practice_.cells.first_fraction);
  }

  /// The column of the cell at which `fraction` of the area is reached.
  std::size_t at_fraction(std::vector<std::size_t> cells, const CellTimes& times, double fraction) {
    std::stable_sort(cells.begin(), cells.end(), [&times](std::size_t a, std::size_t b) {
      if (!times[a] || !times[b]) return times[a].has_value() && !times[b].has_value();
      return rounded(*times[a]) < rounded(*times[b]);
    });
    double whole_m2 = 0.0;
    for (const std::size_t i : cells) whole_m2 += zone_->cells[i].cell.area_m2;
    constexpr double rounding = 1e-9;  // as in time_of_fraction
    double come_m2 = 0.0;
    for (const std::size_t i : cells) {
      come_m2 += zone_->cells[i].cell.area_m2;
      if (come_m2 >= (fraction - rounding) * whole_m2) return of_cell(i);
    }
    return of_cell(cells.back());
  }

  const ColumnHistory& history(std::size_t cell) const {
    return run_.histories[zone_->cells[cell].history];
  }

  std::size_t of_cell(std::size_t cell) { return keep(zone_->cells[cell].history, asked_); }

  std::size_t of_face(const FaceRun& face) {
    ColumnQuestions asked;
    asked.operations = {Operation::strip};
    return keep(face.history, asked);
  }

  std::size_t keep(std::size_t column, const ColumnQuestions& asked) {
    const auto begin = columns.begin() + static_cast<std::ptrdiff_t>(zone_begins_);
    const auto found = std::find(begin, columns.end(), column);
    if (found != columns.end()) return static_cast<std::size_t>(found - columns.begin());
    columns.push_back(column);
    questions.push_back(asked);
    return columns.size() - 1;
  }

  const Job& job_;
  const PourRun& run_;
  const Practice& practice_;
  const ZoneRun* zone_ = nullptr;
  std::size_t zone_begins_ = 0;
  ColumnQuestions asked_;
};

PartColumns columns_of(std::string_view part_id, const ZonePlan& plan, const ZoneColumns& columns) {
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    if (plan.parts[i].id == part_id) return columns.parts[i];
  }
  if (plan.border && plan.border->id == part_id) return *columns.border;
  for (std::size_t i = 0; i < plan.faces.size(); ++i) {
    if (plan.faces[i].id == part_id) return {columns.faces[i], columns.faces[i]};
  }
  return columns.whole;
}

DayModel::DayModel(const Job& job, const PourRun& run, const PourRun& shown, const DayPlan& plan,
                   const Practice& practice, const SampleScale& scale)
    : practice_(practice), scale_(scale) {
  Choosing choosing(job, shown, practice);
  for (std::size_t i = 0; i < plan.zones.size(); ++i) {
    zones_.push_back(choosing.choose(i, plan.zones[i]));
  }
  set_ = thinned(columns_of(run), choosing.columns, run.weather.grid.count);
  questions_ = std::move(choosing.questions);
}

std::size_t DayModel::ask_surface(double at_s) {
  for (ColumnQuestions& questions : questions_) questions.surface_at_s.push_back(at_s);
  return questions_.front().surface_at_s.size() - 1;
}

Sample DayModel::sample(const UncertainInputs& uncertain_inputs) const {
  return sample_of(uncertain_inputs, practice_.spread, scale_);
}

DayEvents DayModel::on(const UncertainInputs& uncertain_inputs) const {
  DayEvents events(set_.columns.size());
  SolverSettings solver;
  solver.threads = 1;  // the days are computed in parallel
  const Sample drawn = sample(uncertain_inputs);
  const Practice practice = with_errors(practice_, drawn.practice);
  visit_sampled(set_, drawn, solver,
                [&](std::size_t i, const ColumnHistory& history, const MixModel& mix,
                    const SiteWeather& weather) {
                  events[i] = events_of(history, mix, questions_[i], weather, practice);
                });
  return events;
}

std::vector<DayEvents> solve_days(const DayModel& model,
                                  const std::vector<UncertainInputs>& uncertain_inputs,
                                  const EnsembleSettings& settings) {
  std::vector<DayEvents> days(uncertain_inputs.size());
  std::mutex mutex;
  std::size_t done = 0;
  in_parallel(uncertain_inputs.size(), settings.threads, [&](std::size_t i) {
    days[i] = model.on(uncertain_inputs[i]);
    const std::lock_guard<std::mutex> lock(mutex);
    if (settings.progress) settings.progress(++done);
  });
  return days;
}

Ensemble sample_days(const DayModel& model, const EnsembleSettings& settings) {
  Ensemble ensemble;
  ensemble.zones = model.zones();
  ensemble.planned = model.on({});
  ensemble.uncertain_inputs = even_uncertain_inputs(settings.samples);
  ensemble.days = solve_days(model, ensemble.uncertain_inputs, settings);
  const double each = settings.samples > 0 ? 1.0 / static_cast<double>(settings.samples) : 0.0;
  ensemble.weights.assign(settings.samples, each);
  return ensemble;
}

Ensemble first_days(const Ensemble& ensemble, std::size_t count) {
  const auto first = [count](const auto& all) {
    return std::remove_cvref_t<decltype(all)>(
        all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min(count, all.size())));
  };
  Ensemble few{ensemble.zones,       ensemble.central,
               ensemble.planned,     first(ensemble.uncertain_inputs),
               first(ensemble.days), {}};
  few.weights.assign(few.days.size(), 1.0 / static_cast<double>(few.days.size()));
  return few;
}

namespace {

/// A zone's first and last tenth, those of its parts and its border, what cools first, and faces.
std::size_t max_columns_of(const ZonePlan& zone) {
  const std::size_t parts = 1 + zone.parts.size() + (zone.border ? 1 : 0);
  return 2 * parts + 1 + zone.faces.size();
}

}  // namespace

Ensemble sampled_days(const PlannedPour& pour, const EnsembleSettings& settings) {
  const SampleScale scale = sample_scale(pour.job, pour.run, pour.forecast, pour.practice.spread);
  const DayModel model(pour.job, pour.run, pour.plan, pour.practice, scale);
  return sample_days(model, settings);
}

std::size_t samples_for(const DayPlan& plan, std::size_t usual) {
  std::size_t columns = 1;
  for (const ZonePlan& zone : plan.zones) columns += max_columns_of(zone);
  return std::min(usual, std::max(min_samples, max_sampled_columns / columns));
}

}  // namespace slabtide
