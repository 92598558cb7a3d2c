#include "slabtide/day/uncertainty/column_events.h"

#include "slab/process/setting.h"
#include "slabtide/day/windows/saw_plan.h"

namespace slabtide {

namespace {

void find_saw_opens(ColumnEvents& events, const ColumnHistory& history,
                    const ColumnQuestions& questions, const Practice& practice) {
  for (const SawKind kind : kinds_of_saw) {
    const Operation operation =
        kind == SawKind::early_entry ? Operation::saw_dry : Operation::saw_wet;
    events.window(operation).opens_s = saw_opens_s(kind, history, questions.aggregate, practice);
  }
}

void find_felt(ColumnEvents& events, const ColumnHistory& history, const Practice& practice) {
  const auto reaches = [&history](double psi) {
    return first_reaches(history.time_s, history.resistance_work_psi, psi);
  };
  events.thumbprint_s = reaches(practice.window(Operation::stamp).opens_psi);
  events.print_firm_s = reaches(practice.window(Operation::stamp).closes_psi);
  events.edge_held_s = reaches(practice.window(Operation::first_edge).opens_psi);
}

}  // namespace

ColumnEvents events_of(const ColumnHistory& history, const MixModel& mix,
                       const ColumnQuestions& questions, const SiteWeather& weather,
                       const Practice& practice) {
  ColumnEvents events;
  events.placed_s = history.time_s.front();
  const auto reaches = [&history](double psi) {
    return first_reaches(history.time_s, history.resistance_middle_psi, psi);
  };
  events.initial_set_s = reaches(initial_set_psi);
  events.final_set_s = reaches(final_set_psi);
  const Bleeding bleeding = bleeding_of(history, practice);
  if (bleeding.sheen_gone) events.sheen_gone_s = bleeding.sheen_gone->at_s;
  for (const Operation operation : questions.operations) {
    events.window(operation) = cell_window(history, bleeding, practice.window(operation), practice);
  }
  events.min_young_surface_c = young_surface(history, practice.limits).min_c;
  if (questions.next_day) {
    events.window(Operation::walk).opens_s = foot_traffic_opens_s(history, practice.set);
    events.window(Operation::expose) = expose_window(history, practice.set);
    events.window(Operation::wash).opens_s = wash_opens_s(history, practice.set);
    events.window(Operation::seal).opens_s = seal_opens_s(history, weather, practice);
    find_saw_opens(events, history, questions, practice);
  }
  find_felt(events, history, practice);
  for (const double at_s : questions.surface_at_s) {
    events.surface_c.push_back(value_at(history.time_s, history.surface_c, at_s));
  }
  if (questions.cracks) {
    events.stress_limit_s =
        stress_reaches_s(history, mix, *questions.cracks, practice.saw.cut_by_ratio);
    events.surface_limit_s = surface_fallen_s(history, practice);
  }
  return events;
}

}  // namespace slabtide
