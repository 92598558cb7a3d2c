#include "slabtide/day/joints/cut_plan.h"

#include <algorithm>
#include <map>
#include <stdexcept>

#include "core/parallel.h"
#include "core/rounded.h"
#include "cut_memo.h"
#include "day/geometry/plane.h"
#include "day/pour/validate_run.h"
#include "job/checks/validate.h"
#include "slabtide/day/pour/cell_times.h"

namespace slabtide {

namespace {

/// The cells whose centres are so close to a joint that they are sawn with it, one for each column
/// that they use.
std::vector<const CellRun*> cells_along(const ZoneRun& zone, const Joint& joint) {
  std::map<std::size_t, const CellRun*> by_column;
  // The allowance includes rows at exactly that distance, whatever the rounding.
  const double beside_joint_m = 0.75 * zone.cell_m + 1e-6;
  const auto [west, east] = std::minmax(joint.from.x_m, joint.to.x_m);
  const auto [south, north] = std::minmax(joint.from.y_m, joint.to.y_m);
  for (const CellRun& cell : zone.cells) {
    const Point at = cell.cell.centre;
    const bool near_box = at.x_m > west - beside_joint_m && at.x_m < east + beside_joint_m &&
                          at.y_m > south - beside_joint_m && at.y_m < north + beside_joint_m;
    if (near_box && plane::distance(at, joint) < beside_joint_m) {
      by_column.try_emplace(cell.history, &cell);
    }
  }
  const CellRun& middle = nearest_cell(zone, plane::middle(joint));
  by_column.try_emplace(middle.history, &middle);
  std::vector<const CellRun*> cells;
  cells.reserve(by_column.size());
  for (const auto& [column, cell] : by_column) cells.push_back(cell);
  return cells;
}

/// Computes the times of a cut from the cells along it.
class CutTimes {
 public:
  CutTimes(const Job& job, const PourRun& run, const Practice& practice)
      : job_(job), run_(run), practice_(practice) {}

  JointTurn turn(std::size_t zone, const Joint& joint) const {
    const ZoneRun& zone_run = run_.zones[zone];
    const auto opens_at_s = opens_s(SawKind::early_entry, cells_along(zone_run, joint));
    return {nearest_cell(zone_run, plane::middle(joint)).cell.along_m,
            opens_at_s.value_or(run_.weather.grid.end_s())};
  }

  void fill(PlannedCut& cut) const {
    const std::vector<const CellRun*> cells = cells_along(run_.zones[cut.zone], cut.cut.joint);
    cut.early_entry_opens = opens(SawKind::early_entry, cells);
    cut.wet_opens = opens(SawKind::wet, cells);
    cut.stress_limit = first_of(cells, [&](const CellRun& cell) {
      return stress_reaches_s(run_.histories[cell.history], run_.mixes[cell.mix], cut.cut.piece,
                              practice_.saw.cut_by_ratio);
    });
    cut.surface_limit = first_of(cells, [&](const CellRun& cell) {
      return surface_fallen_s(run_.histories[cell.history], practice_);
    });
    cut.latest = cut.stress_limit;
    if (cut.surface_limit && (!cut.latest || *cut.surface_limit < *cut.latest)) {
      cut.latest = cut.surface_limit;
    }
  }

 private:
  /// When the last of the cells can be sawn.
  std::optional<double> opens_s(SawKind kind, const std::vector<const CellRun*>& cells) const {
    double last_s = 0.0;
    for (const CellRun* cell : cells) {
      const auto at_s =
          saw_opens_s(kind, run_.histories[cell->history], job_.mix.aggregate, practice_);
      if (!at_s) return std::nullopt;
      last_s = std::max(last_s, *at_s);
    }
    return last_s;
  }

  std::optional<UtcTime> opens(SawKind kind, const std::vector<const CellRun*>& cells) const {
    const auto at_s = opens_s(kind, cells);
    if (!at_s) return std::nullopt;
    return run_.at(*at_s);
  }

  template <class TimeOf>
  std::optional<UtcTime> first_of(const std::vector<const CellRun*>& cells, TimeOf time_of) const {
    std::optional<double> first_s;
    for (const CellRun* cell : cells) {
      if (const auto at_s = time_of(*cell)) first_s = std::min(*at_s, first_s.value_or(*at_s));
    }
    if (!first_s) return std::nullopt;
    return run_.at(*first_s);
  }

  const Job& job_;
  const PourRun& run_;
  const Practice& practice_;
};

/// A zone's cuts in working order.
std::vector<PlannedCut> cuts_of(std::size_t zone, const ZoneJoints& joints, const Job& job,
                                const CutTimes& times, CutMemo* memo) {
  const Zone& described = job.zones[zone];
  std::vector<JointTurn> turns;
  for (const Joint& joint : joints.joints) turns.push_back(times.turn(zone, joint));
  std::vector<PlannedCut> cuts;
  for (const Cut& cut : memo != nullptr ? memo->order_cuts(zone, described, turns)
                                        : order_cuts(described, joints, turns)) {
    PlannedCut planned;
    planned.zone = zone;
    planned.number = cuts.size() + 1;
    planned.cut = cut;
    times.fill(planned);
    cuts.push_back(planned);
  }
  return cuts;
}

/// Whether the shift makes every cut of a zone in time.
bool in_time(const SawShift& shift, std::size_t zone, const std::vector<PlannedCut>& cuts) {
  return std::none_of(shift.cuts.begin(), shift.cuts.end(),
                      [&](const SawnCut& cut) { return cut.late && cuts[cut.cut].zone == zone; }) &&
         std::none_of(shift.never_open.begin(), shift.never_open.end(),
                      [&](std::size_t cut) { return cuts[cut].zone == zone; });
}

OperationWindow tooled_window(const ZoneRun& zone, const PourRun& run, const Practice& practice) {
  std::vector<std::size_t> field;
  for (std::size_t i = 0; i < zone.cells.size(); ++i) {
    if (!zone.cells[i].cell.border) field.push_back(i);
  }
  const PartPlan part =
      plan_part({}, std::move(field), zone, {Operation::tooled_joint}, {}, run, practice);
  return *part.window(Operation::tooled_joint);
}

JointChoice choose(std::size_t zone, const CutPlan& plan, const Job& job, const PourRun& run,
                   const Practice& practice) {
  JointChoice choice;
  if (plan.joints[zone].joints.empty()) return choice;
  choice.tooled = tooled_window(run.zones[zone], run, practice);
  choice.way = JointWay::tool;
  for (const SawKind kind : kinds_of_saw) {
    const SawShift& shift = plan.shift(kind);
    if (!in_time(shift, zone, plan.cuts)) continue;
    choice.in_time.push_back(kind);
    // The early-entry saw comes first, because it leaves more time to spare.
    const bool usable = shift.on_hand || job.pour.saws.empty();
    if (choice.way == JointWay::tool && usable) {
      choice.way = kind == SawKind::early_entry ? JointWay::early_entry : JointWay::wet;
    }
  }
  return choice;
}

}  // namespace

namespace {

void take_earlier(std::optional<UtcTime>& first, const std::optional<UtcTime>& at) {
  if (at && (!first || *at < *first)) first = at;
}

bool is_cut(const CutPlan& plan, std::size_t zone) {
  return plan.choices.at(zone).way != JointWay::none_needed;
}

}  // namespace

std::optional<SawKind> saw_of(JointWay way) {
  if (way == JointWay::early_entry) return SawKind::early_entry;
  if (way == JointWay::wet) return SawKind::wet;
  return std::nullopt;
}

std::optional<UtcTime> first_due(const CutPlan& plan, std::size_t zone) {
  std::optional<UtcTime> due;
  for (const PlannedCut& cut : plan.cuts) {
    if (cut.zone == zone) take_earlier(due, cut.latest);
  }
  return due;
}

std::vector<SawPlan> saws_of_cuts(std::vector<SawPlan> uncut, const CutPlan& plan,
                                  std::size_t zone) {
  if (!is_cut(plan, zone)) return {};
  for (SawPlan& saw : uncut) {
    bool all_open = true;
    saw.opens = saw.open_all_over = saw.stress_limit = saw.surface_limit = std::nullopt;
    saw.too_late = false;
    for (const PlannedCut& cut : plan.cuts) {
      if (cut.zone != zone) continue;
      const std::optional<UtcTime>& opens = cut.opens(saw.kind);
      take_earlier(saw.opens, opens);
      take_earlier(saw.stress_limit, cut.stress_limit);
      take_earlier(saw.surface_limit, cut.surface_limit);
      all_open = all_open && opens.has_value();
      saw.open_all_over = std::max(saw.open_all_over, opens);
      saw.too_late = saw.too_late || (cut.latest && (!opens || *opens > *cut.latest));
    }
    if (!all_open) saw.open_all_over.reset();
    saw.latest = first_due(plan, zone);
  }
  return uncut;
}

std::string_view joint_way_id(JointWay way) {
  switch (way) {
    case JointWay::none_needed:
      return "none_needed";
    case JointWay::early_entry:
      return "saw_dry";
    case JointWay::wet:
      return "saw_wet";
    case JointWay::tool:
      return "tooled_joint";
  }
  return "none_needed";
}

CutPlan plan_cuts(const Job& job, const PourRun& run, const Practice& practice, CutMemo* memo,
                  int threads) {
  validate(job);
  validate(practice);
  validate(run, job);
  if (memo != nullptr && memo->joints().size() != job.zones.size()) {
    throw std::invalid_argument("cut plan: the joints are not of this job's zones");
  }
  CutPlan plan;
  plan.joints.resize(job.zones.size());
  std::vector<std::vector<PlannedCut>> cuts(job.zones.size());
  const CutTimes times(job, run, practice);
  in_parallel(job.zones.size(), threads, [&](std::size_t zone) {
    plan.joints[zone] =
        memo != nullptr ? memo->joints()[zone] : plan_joints(job.zones[zone], job, practice.joints);
    cuts[zone] = cuts_of(zone, plan.joints[zone], job, times, memo);
  });
  for (const auto& of_zone : cuts) {
    plan.cuts.insert(plan.cuts.end(), of_zone.begin(), of_zone.end());
  }
  for (const SawKind kind : kinds_of_saw) {
    plan.shifts[static_cast<std::size_t>(kind)] = plan_shift(kind, plan.cuts, job, practice.saw);
  }
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    plan.choices.push_back(choose(zone, plan, job, run, practice));
  }
  return plan;
}

}  // namespace slabtide
