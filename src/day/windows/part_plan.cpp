#include "slabtide/day/windows/part_plan.h"

#include <algorithm>
#include <map>
#include <unordered_map>
#include <utility>

#include "part_columns.h"
#include "slab/process/setting.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/cell_times.h"

namespace slabtide {

namespace {

/// The hottest surface is looked for during the first day of curing (ours).
constexpr double surface_watch_s = 18.0 * seconds_per_hour;

/// Collects one time per cell and finds when fractions of the area are reached.
class Areas {
 public:
  explicit Areas(const PourRun& run) : run_(run) {}

  void add(std::optional<double> at_s, double area_m2) { areas_.push_back({at_s, area_m2}); }

  std::optional<UtcTime> by_fraction(double fraction) const {
    const auto at_s = time_of_fraction(areas_, fraction);
    if (!at_s) return std::nullopt;
    return run_.at(*at_s);
  }

 private:
  const PourRun& run_;
  std::vector<TimedArea> areas_;
};

/// Everything plan_part works on, passed around together.
struct PartContext {
  const std::vector<std::size_t>& cells;
  const std::vector<PartColumn>& columns;
  const ZoneRun& zone;
  const PourRun& run;
  const Practice& practice;
  const std::unordered_map<std::size_t, Bleeding> bleedings;  ///< by history

  const ColumnHistory& history(const PartColumn& column) const {
    return run.histories[column.history];
  }
  const Bleeding& bleeding(const PartColumn& column) const { return bleedings.at(column.history); }
  /// Cells are placed at rounded times, the first up to a minute early; nothing happens to them
  /// before placing begins.
  UtcTime since_placing(UtcTime at) const { return std::max(at, zone.placing.start); }
};

std::unordered_map<std::size_t, Bleeding> bleedings_of(const std::vector<PartColumn>& columns,
                                                       const PourRun& run,
                                                       const Practice& practice) {
  std::unordered_map<std::size_t, Bleeding> bleedings;
  for (const PartColumn& column : columns)
    bleedings.emplace(column.history, bleeding_of(run.histories[column.history], practice));
  return bleedings;
}

/// A shorter window counts as none (ours): nobody works to the second.
constexpr double min_window_s = seconds_per_minute;

/// A window that closes before it opens, or almost as it opens, closes as it opens.
void shut_if_never(OperationWindow& window) {
  if (!window.opens || !window.closes) return;
  if (seconds_between(*window.opens, *window.closes) >= min_window_s) return;
  window.stiff_by = window.closes;
  window.closes = window.opens;
  if (window.closed_all_over) {
    window.closed_all_over =
        std::max(*window.closed_all_over, window.open_all_over.value_or(*window.opens));
  }
}

/// What is to be said of a window on plastic concrete; empty where all is as it should be.
std::string plastic_note(const OperationWindow& window, bool stiff_before_dry,
                         const PartContext& part) {
  if (window.is_never() &&
      stiff_when_placed(part.columns, part.run, part.practice.window(window.operation),
                        part.practice.cells)) {
    return "too stiff by the time it is placed: there is no good time for it";
  }
  if (window.is_never()) return "stiff before the bleeding is over: there is no good time for it";
  if (stiff_before_dry) {
    return "some of it is stiff before the bleeding is over: there is no good time for that";
  }
  if (window.still_bleeds) {
    return "a little water still rises when it opens: drag it off, and no float or trowel after";
  }
  if (window.wet_until) {
    return "bleed water stands on it until it is too stiff: drag it off first";
  }
  if (window.water_stands) {
    return "bleed water still stands when it opens: drag it off first, do not work it in";
  }
  if (!window.opens) return std::string(after_plan_words);
  if (window.closes && window.open_all_over && *window.closes < *window.open_all_over) {
    return "the first of it is too stiff before the last is ready: work it in parts";
  }
  return {};
}

/// When the sheen is off the first tenth of the part.
std::optional<UtcTime> first_dry(const PartContext& part) {
  Areas dry(part.run);
  for (const PartColumn& column : part.columns) {
    const auto& gone = part.bleeding(column).sheen_gone;
    dry.add(gone ? std::optional(gone->at_s) : std::nullopt, column.area_m2);
  }
  return dry.by_fraction(part.practice.cells.first_fraction);
}

OperationWindow plastic_window(Operation operation, const PartContext& part) {
  const ResistanceWindow& takes = part.practice.window(operation);
  OperationWindow window;
  window.operation = operation;
  Areas opens(part.run);
  Areas closes(part.run);
  bool stiff_before_dry = false;
  for (const PartColumn& column : part.columns) {
    const CellWindow cell =
        cell_window(part.history(column), part.bleeding(column), takes, part.practice);
    opens.add(cell.opens_s, column.area_m2);
    closes.add(cell.closes_s, column.area_m2);
    stiff_before_dry = stiff_before_dry || cell.stiff_before_dry;
    window.water_stands = window.water_stands || cell.water_stands;
    window.still_bleeds = window.still_bleeds || cell.still_bleeds;
  }
  window.opens = opens.by_fraction(part.practice.cells.first_fraction);
  window.open_all_over = opens.by_fraction(part.practice.cells.all_over_fraction);
  window.closes = closes.by_fraction(part.practice.cells.first_fraction);
  window.closed_all_over = closes.by_fraction(part.practice.cells.all_over_fraction);
  for (auto* at : {&window.opens, &window.open_all_over, &window.closes, &window.closed_all_over}) {
    if (*at) *at = part.since_placing(**at);
  }
  shut_if_never(window);
  if (window.water_stands && window.closes && !window.is_never()) {
    const auto dry_at = first_dry(part);
    if (dry_at && *dry_at >= *window.closes) window.wet_until = dry_at;
  }
  window.note = plastic_note(window, stiff_before_dry, part);
  return window;
}

/// A window that opens when a condition on the history is first met, once everything has set, and
/// does not close.
template <class OpensAt>
OperationWindow late_window(Operation operation, const PartContext& part,
                            const std::optional<UtcTime>& final_set, OpensAt opens_at_s) {
  OperationWindow window;
  window.operation = operation;
  Areas opens(part.run);
  for (const PartColumn& column : part.columns) {
    opens.add(opens_at_s(part.history(column)), column.area_m2);
  }
  const auto by_fraction = [&](double fraction) {
    return held_until_set(operation, opens.by_fraction(fraction), final_set);
  };
  window.opens = by_fraction(part.practice.cells.first_fraction);
  window.open_all_over = by_fraction(part.practice.cells.all_over_fraction);
  if (!window.opens) window.note = after_plan_words;
  return window;
}

/// The wash-off of exposed aggregate, which is the one late work that can come too late.
OperationWindow exposing_window(const PartContext& part, const std::optional<UtcTime>& final_set) {
  const SetRules& set = part.practice.set;
  OperationWindow window = late_window(
      Operation::expose, part, final_set,
      [&set](const ColumnHistory& history) { return expose_window(history, set).opens_s; });
  Areas closes(part.run);
  for (const PartColumn& column : part.columns) {
    closes.add(expose_window(part.history(column), set).closes_s, column.area_m2);
  }
  window.closes = closes.by_fraction(part.practice.cells.first_fraction);
  window.closed_all_over = closes.by_fraction(part.practice.cells.all_over_fraction);
  shut_if_never(window);
  if (window.is_never()) {
    window.note =
        "the retarder wears off before the slab can take a hose: use one that holds longer";
  }
  return window;
}

void add_late_windows(PartPlan& plan, LateWork late, const PartContext& part) {
  plan.windows.push_back(
      late_window(Operation::walk, part, plan.final_set, [&](const ColumnHistory& history) {
        return foot_traffic_opens_s(history, part.practice.set);
      }));
  if (late.exposed) plan.windows.push_back(exposing_window(part, plan.final_set));
  if (late.washed) {
    plan.windows.push_back(late_window(
        Operation::wash, part, plan.final_set,
        [&](const ColumnHistory& history) { return wash_opens_s(history, part.practice.set); }));
  }
  if (!late.sealed) return;
  plan.windows.push_back(
      late_window(Operation::seal, part, plan.final_set, [&](const ColumnHistory& history) {
        return seal_opens_s(history, part.run.weather, part.practice);
      }));
}

void find_set_times(PartPlan& plan, const PartContext& part) {
  Areas sheen(part.run);
  Areas initial(part.run);
  Areas final_set(part.run);
  for (const PartColumn& column : part.columns) {
    const ColumnHistory& history = part.history(column);
    const auto& gone = part.bleeding(column).sheen_gone;
    sheen.add(gone ? std::optional(gone->at_s) : std::nullopt, column.area_m2);
    initial.add(first_reaches(history.time_s, history.resistance_middle_psi, initial_set_psi),
                column.area_m2);
    final_set.add(first_reaches(history.time_s, history.resistance_middle_psi, final_set_psi),
                  column.area_m2);
  }
  plan.sheen_gone = sheen.by_fraction(part.practice.cells.all_over_fraction);
  plan.initial_set = initial.by_fraction(part.practice.cells.first_fraction);
  plan.final_set = final_set.by_fraction(part.practice.cells.all_over_fraction);
  for (auto* at : {&plan.sheen_gone, &plan.initial_set, &plan.final_set}) {
    if (*at) *at = part.since_placing(**at);
  }
}

/// The highest of the values that count in any of the cells, and the earliest instant at which a
/// value almost equals it: many cells have the same history, and rounding must not pick one of
/// them.
struct Peak {
  double value = 0.0;
  double at_s = 0.0;
};

template <class Counts>
Peak peak_of(const PartContext& part, std::vector<double> ColumnHistory::*values, Counts counts) {
  constexpr double hair = 1e-6;
  std::vector<Peak> seen;
  for (const PartColumn& column : part.columns) {
    const ColumnHistory& history = part.history(column);
    for (std::size_t i = 0; i < history.time_s.size(); ++i) {
      if (counts(history, i)) seen.push_back({(history.*values)[i], history.time_s[i]});
    }
  }
  // Concrete that has set by the time it is placed is never plastic: the value is then given for
  // the time of placing.
  if (seen.empty()) return {0.0, part.history(part.columns.front()).time_s.front()};
  const auto max = std::max_element(seen.begin(), seen.end(),
                                    [](const Peak& a, const Peak& b) { return a.value < b.value; });
  Peak first = *max;
  for (const Peak& one : seen) {
    if (one.value >= max->value - hair) first.at_s = std::min(first.at_s, one.at_s);
  }
  return first;
}

void find_peaks(PartPlan& plan, const PartContext& part) {
  const Peak evaporation = peak_of(part, &ColumnHistory::evaporation_kg_m2_h,
                                   [&](const ColumnHistory& history, std::size_t i) {
                                     return history.resistance_middle_psi[i] < initial_set_psi;
                                   });
  const Peak surface =
      peak_of(part, &ColumnHistory::surface_c, [](const ColumnHistory& history, std::size_t i) {
        return history.time_s[i] - history.time_s.front() < surface_watch_s;
      });
  plan.peak_evaporation_kg_m2_h = std::max(0.0, evaporation.value);
  plan.peak_evaporation_at = part.since_placing(part.run.at(evaporation.at_s));
  plan.surface_peak_c = surface.value;
  plan.surface_peak_at = part.since_placing(part.run.at(surface.at_s));
}

std::optional<double> crust_s(const ColumnHistory& history, const CrustRules& crust) {
  for (std::size_t i = 0; i < history.time_s.size(); ++i) {
    const double deep = history.resistance_deep_psi[i];
    const double top = history.resistance_top_psi[i];
    if (deep < crust.body_under_psi && top > crust.top_over_psi && top > crust.ratio * deep) {
      return history.time_s[i];
    }
  }
  return std::nullopt;
}

/// A crust shows as a top that is firm before the concrete below it, or as a top that dries while
/// the concrete below still bleeds; each counts once a tenth of the part shows it.
void find_top_troubles(PartPlan& plan, const PartContext& part) {
  Areas early(part.run);
  Areas crust(part.run);
  for (const PartColumn& column : part.columns) {
    const ColumnHistory& history = part.history(column);
    const auto& gone = part.bleeding(column).sheen_gone;
    const SheenRules& rules = part.practice.sheen;
    const bool misleads = gone && gone->bleed_left > rules.early_bleed_fraction &&
                          gone->evaporation_kg_m2_h >= rules.early_evaporation_kg_m2_h;
    early.add(misleads ? std::optional(gone->at_s) : std::nullopt, column.area_m2);
    crust.add(crust_s(history, part.practice.crust), column.area_m2);
  }
  plan.early_sheen_at = early.by_fraction(part.practice.cells.first_fraction);
  plan.crust_at = crust.by_fraction(part.practice.cells.first_fraction);
}

double sunlit_fraction(const PartPlan& plan, const PartContext& part) {
  const TimeGrid& grid = part.run.weather.grid;
  const double end_s =
      plan.initial_set ? seconds_between(grid.start, *plan.initial_set) : grid.end_s();
  double lit = 0.0;
  double all = 0.0;
  // Cells of one column were placed together and see the same.
  std::map<std::pair<std::size_t, double>, double> area_m2_of;
  for (const std::size_t cell : part.cells) {
    const CellRun& cell_run = part.zone.cells[cell];
    area_m2_of[{cell_run.exposure, cell_run.placed_s}] += cell_run.cell.area_m2;
  }
  for (const auto& [column, area_m2] : area_m2_of) {
    const auto& [which, placed_s] = column;
    const CellExposure& exposure = part.run.exposures[which];
    for (std::size_t k = 0; k < grid.count; ++k) {
      const double at_s = static_cast<double>(k) * grid.step_s;
      if (at_s < placed_s || at_s > end_s) continue;
      lit += exposure.sunlit_fraction[k] * area_m2;
      all += area_m2;
    }
  }
  return all > 0.0 ? lit / all : 0.0;
}

}  // namespace

std::optional<double> OperationWindow::minutes() const {
  if (!opens || !closes) return std::nullopt;
  return std::max(0.0, seconds_between(*opens, *closes) / seconds_per_minute);
}

bool OperationWindow::is_never() const { return opens && closes && *closes <= *opens; }

const OperationWindow* PartPlan::window(Operation operation) const {
  const auto found = std::find_if(
      windows.begin(), windows.end(),
      [operation](const OperationWindow& window) { return window.operation == operation; });
  return found == windows.end() ? nullptr : &*found;
}

void note_standing_water(OperationWindow& window, const std::optional<UtcTime>& sheen_gone) {
  if (!window.note.empty() || !window.open_all_over) return;
  if (sheen_gone && *sheen_gone <= *window.open_all_over) return;
  window.note = "water still stands when it opens: push it off first";
}

PartPlan plan_part(std::string name, std::vector<std::size_t> cells, const ZoneRun& zone,
                   const std::vector<Operation>& operations, LateWork late, const PourRun& run,
                   const Practice& practice) {
  PartPlan plan;
  plan.name = std::move(name);
  plan.cells = std::move(cells);
  const std::vector<PartColumn> columns = columns_of(zone, plan.cells);
  const PartContext part{plan.cells, columns,  zone,
                         run,        practice, bleedings_of(columns, run, practice)};
  for (const std::size_t i : plan.cells) plan.area_m2 += zone.cells[i].cell.area_m2;
  for (const Operation operation : operations) {
    plan.windows.push_back(plastic_window(operation, part));
  }
  find_set_times(plan, part);
  add_late_windows(plan, late, part);
  find_peaks(plan, part);
  find_top_troubles(plan, part);
  plan.sunlit_fraction = sunlit_fraction(plan, part);
  return plan;
}

std::vector<std::optional<double>> ready_times_s(const ZoneRun& zone, Operation operation,
                                                 const PourRun& run, const Practice& practice) {
  std::vector<std::optional<double>> times;
  times.reserve(zone.cells.size());
  std::unordered_map<std::size_t, std::optional<double>> opens_of;
  for (const CellRun& cell : zone.cells) {
    const auto [opens_s, is_new] = opens_of.try_emplace(cell.history);
    if (is_new) {
      const ColumnHistory& history = run.histories[cell.history];
      opens_s->second = cell_window(history, practice.window(operation), practice).opens_s;
    }
    times.push_back(opens_s->second);
  }
  return times;
}

OperationWindow plan_strip(const FaceRun& face, const PourRun& run, const Practice& practice) {
  const CellWindow cell =
      cell_window(run.histories[face.history], practice.window(Operation::strip), practice);
  OperationWindow window;
  window.operation = Operation::strip;
  if (cell.opens_s) window.opens = run.at(*cell.opens_s);
  window.open_all_over = window.opens;
  if (cell.closes_s) window.closes = run.at(*cell.closes_s);
  window.closed_all_over = window.closes;
  shut_if_never(window);
  if (!window.opens) window.note = after_plan_words;
  return window;
}

}  // namespace slabtide
