#include "slabtide/day/windows/zone_plan.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/geometry/zone_geometry.h"
#include "parts.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

std::vector<std::size_t> cells_where(const ZoneRun& run, bool border) {
  std::vector<std::size_t> cells;
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    if (run.cells[i].cell.border == border) cells.push_back(i);
  }
  return cells;
}

bool takes_release(Finish finish) {
  return finish == Finish::stamp || finish == Finish::texture_roll;
}

std::string working_order(const std::vector<PartPlan>& parts, Operation operation) {
  if (parts.empty()) return {};
  std::string order = fmt::format("{} the {} first", operation_words(operation), parts[0].name);
  for (std::size_t i = 1; i < parts.size(); ++i) {
    order += fmt::format(", {}the {}", i + 1 == parts.size() ? "last " : "then ", parts[i].name);
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
  return window == nullptr ? std::nullopt : window->opens;
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

bool ZonePlan::is_washed() const {
  return whole.window(Operation::wash) != nullptr ||
         (border && border->window(Operation::wash) != nullptr);
}

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
  const bool released = takes_release(zone.finish);
  ZonePlan plan;
  plan.name = zone.name;
  plan.area_m2 = area_m2(zone.outline);
  plan.volume_m3 = volume_m3(zone);
  plan.uncut_length_m = uncut_length_m(zone);
  plan.placed = zone_run.placing;
  plan.whole =
      plan_part({}, cells_where(zone_run, false), zone_run, operations, released, run, practice);
  const Operation main = main_operation(zone.finish);
  for (ZonePart& part :
       split_into_parts(job, zone, zone_run, ready_times_s(zone_run, main, run, practice),
                        practice.cells.part_differs_min * seconds_per_minute)) {
    plan.parts.push_back(plan_part(std::move(part.name), std::move(part.cells), zone_run,
                                   operations, released, run, practice));
    plan.parts.back().id = std::move(part.id);
  }
  plan.working_order = working_order(plan.parts, main);
  if (zone.border) {
    plan.border = plan_part("border", cells_where(zone_run, true), zone_run,
                            operations_of(zone.border->finish), takes_release(zone.border->finish),
                            run, practice);
    plan.border->id = "border";
  }
  plan.touch = plan_touch(plan, zone, zone_run, run, practice);
  plan.faces = plan_faces(zone, zone_run, run, practice);
  for (const SawKind kind : {SawKind::early_entry, SawKind::wet}) {
    plan.saws.push_back(plan_saw(kind, zone, zone_run, job, run, practice));
  }
  return plan;
}

}  // namespace slabtide
