#include "slabtide/day/windows/zone_plan.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "job/geometry/zone_geometry.h"
#include "parts.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "working_time.h"

namespace slabtide {

namespace {

std::vector<std::size_t> cells_where(const ZoneRun& run, bool border) {
  std::vector<std::size_t> cells;
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    if (run.cells[i].cell.border == border) cells.push_back(i);
  }
  return cells;
}

LateWork late_work(Finish finish, const FinishWork& work) {
  const bool powdered = takes_release(finish) && work.release == ReleaseKind::powder;
  return {finish == Finish::exposed_aggregate, powdered || finish == Finish::salt,
          work.sealer == SealerKind::sealer};
}

/// "start at the far 20 ft, finish at the near 20 ft".
std::string working_order(const std::vector<PartPlan>& parts) {
  if (parts.empty()) return {};
  std::string order = fmt::format("start at the {}", parts[0].name);
  for (std::size_t i = 1; i < parts.size(); ++i) {
    order +=
        fmt::format(", {} the {}", i + 1 == parts.size() ? "finish at" : "go on to", parts[i].name);
  }
  return order;
}

std::vector<PartTouch> plan_touch(const ZonePlan& plan, const Zone& zone, const ZoneRun& zone_run,
                                  const PourRun& run, const Practice& practice) {
  std::vector<TouchedPart> parts;
  for (const PartPlan& part : plan.parts) parts.push_back({&part, main_operation(zone.finish)});
  if (parts.empty()) parts.push_back({&plan.whole, main_operation(zone.finish)});
  if (plan.border) parts.push_back({&*plan.border, main_operation(zone.border->finish)});
  return touch_of(parts, zone_run, run, practice);
}

std::vector<FacePlan> plan_faces(const Zone& zone, const ZoneRun& zone_run, const PourRun& run,
                                 const Practice& practice) {
  std::vector<FacePlan> faces;
  for (std::size_t i = 0; i < zone.faces.size(); ++i) {
    FacePlan face;
    face.id = fmt::format("face-{}", i + 1);
    face.name = zone.faces.size() == 1 ? "step face" : fmt::format("step face {}", i + 1);
    face.facing_deg = zone.faces[i].facing_deg;
    face.strip = plan_strip(zone_run.faces[i], run, practice);
    faces.push_back(std::move(face));
  }
  return faces;
}

/// The later of the two; empty if either never happens.
std::optional<UtcTime> later(const std::optional<UtcTime>& a, const std::optional<UtcTime>& b) {
  if (!a || !b) return std::nullopt;
  return std::max(*a, *b);
}

std::optional<UtcTime> part_opens(const PartPlan& part, Operation operation) {
  const OperationWindow* window = part.window(operation);
  if (window == nullptr) window = part.window(Operation::walk);
  return window == nullptr ? std::nullopt : window->open_all_over;
}

/// The wash-off waits for working hours where the retarder holds so long; else it is done out of
/// them, and says so.
void date_wash_off(OperationWindow& window, const Job& job, const WorkHours& hours) {
  constexpr double least_h = 1.0;  // for the work itself (ours)
  if (!window.opens || !window.closes || window.is_never()) return;
  const UtcTime waits = next_working_time(*window.opens, job, hours);
  if (after_seconds(waits, least_h * seconds_per_hour) <= *window.closes) {
    window.opens = waits;
    if (window.open_all_over) {
      window.open_all_over = next_working_time(*window.open_all_over, job, hours);
    }
  } else if (!is_in_working_hours(*window.opens, job, hours)) {
    window.note = "cannot wait for the next morning: the retarder wears off by then";
  }
}

/// Washing and sealing begin in working hours, for whoever asks; a sealer that must wait for longer
/// than the plan says until when.
void date_late_work(PartPlan& part, const Job& job, const Practice& practice) {
  for (OperationWindow& window : part.windows) {
    const bool seals = window.operation == Operation::seal;
    if (window.operation == Operation::expose) date_wash_off(window, job, practice.crew.hours);
    if (window.operation != Operation::wash && !seals) continue;
    for (auto* at : {&window.opens, &window.open_all_over}) {
      if (*at) *at = next_working_time(**at, job, practice.crew.hours);
    }
    const double days = practice.set.seal_after_days;
    if (!seals || window.opens) continue;
    window.note = "no hour dry enough, and neither too hot nor too cold, by the plan's end";
    if (days * hours_per_day < horizon_h) continue;
    const Date from = job.pour.date + boost::gregorian::days(std::lround(std::ceil(days)));
    window.note = fmt::format("from {} on ({:g} days, or as its label says)",
                              shown_date(from, clock_style(job)), days);
  }
}

void finish_late_work(PartPlan& part, const Job& job, const Practice& practice) {
  date_late_work(part, job, practice);
  for (OperationWindow& window : part.windows) {
    if (window.operation >= Operation::walk) note_standing_water(window, part.sheen_gone);
  }
}

}  // namespace

const PartPlan* ZonePlan::part(std::string_view id) const {
  if (id.empty()) return &whole;
  if (border && border->id == id) return &*border;
  const auto found = std::find_if(parts.begin(), parts.end(),
                                  [id](const PartPlan& part) { return part.id == id; });
  return found == parts.end() ? nullptr : &*found;
}

std::string ZonePlan::part_id(std::string_view called) const {
  std::string by_name;
  bool is_id = false;
  const auto look_at = [&](const auto& place) {
    is_id = is_id || place.id == called;
    if (place.name == called) by_name = place.id;
  };
  for (const PartPlan& part : parts) look_at(part);
  if (border) look_at(*border);
  for (const FacePlan& face : faces) look_at(face);
  return is_id ? std::string(called) : by_name;
}

const OperationWindow* ZonePlan::late_window(Operation operation) const {
  const OperationWindow* const of_field = whole.window(operation);
  return of_field != nullptr || !border ? of_field : border->window(operation);
}

bool ZonePlan::is_exposed() const { return late_window(Operation::expose) != nullptr; }

bool ZonePlan::is_washed() const { return late_window(Operation::wash) != nullptr; }

bool ZonePlan::is_sealed() const { return late_window(Operation::seal) != nullptr; }

std::optional<UtcTime> ZonePlan::final_set() const {
  return border ? later(whole.final_set, border->final_set) : whole.final_set;
}

std::optional<UtcTime> ZonePlan::opens_after_set(Operation operation) const {
  const std::optional<UtcTime> opens = part_opens(whole, operation);
  return border ? later(opens, part_opens(*border, operation)) : opens;
}

ZonePlan plan_zone(const Zone& zone, const ZoneRun& zone_run, const Job& job, const PourRun& run,
                   const Practice& practice) {
  const std::vector<Operation> operations = operations_of(zone.finish);
  const LateWork late = late_work(zone.finish, job.finish_work);
  ZonePlan plan;
  plan.name = zone.name;
  plan.area_m2 = area_m2(zone.outline);
  plan.volume_m3 = volume_m3(zone);
  plan.uncut_length_m = uncut_length_m(zone);
  plan.placed = zone_run.placing;
  plan.whole =
      plan_part({}, cells_where(zone_run, false), zone_run, operations, late, run, practice);
  const Operation main = main_operation(zone.finish);
  for (ZonePart& part :
       split_into_parts(job, zone, zone_run, ready_times_s(zone_run, main, run, practice),
                        practice.cells.part_differs_min * seconds_per_minute)) {
    plan.parts.push_back(plan_part(std::move(part.name), std::move(part.cells), zone_run,
                                   operations, late, run, practice));
    plan.parts.back().id = std::move(part.id);
  }
  plan.working_order = working_order(plan.parts);
  if (zone.border) {
    plan.border = plan_part("border", cells_where(zone_run, true), zone_run,
                            operations_of(zone.border->finish),
                            late_work(zone.border->finish, job.finish_work), run, practice);
    plan.border->id = "border";
  }
  finish_late_work(plan.whole, job, practice);
  for (PartPlan& part : plan.parts) finish_late_work(part, job, practice);
  if (plan.border) finish_late_work(*plan.border, job, practice);
  plan.touch = plan_touch(plan, zone, zone_run, run, practice);
  plan.faces = plan_faces(zone, zone_run, run, practice);
  plan.frost = frost_on_young(zone_run, run, practice.limits);
  plan.saws = plan_saws(zone, zone_run, job, run, practice);
  for (SawPlan& saw : plan.saws) saw.sheen_gone = plan.whole.sheen_gone;
  return plan;
}

}  // namespace slabtide
