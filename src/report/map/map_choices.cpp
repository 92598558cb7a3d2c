#include "map_choices.h"

#include <algorithm>

#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/windows/saw_plan.h"

namespace slabtide {

namespace {

bool calls_for(Finish finish, Operation operation) {
  const std::vector<Operation> all = operations_of(finish);
  return std::find(all.begin(), all.end(), operation) != all.end();
}

bool is_saw(Operation operation) {
  return operation == Operation::saw_dry || operation == Operation::saw_wet;
}

SawKind kind_of(Operation saw) {
  return saw == Operation::saw_dry ? SawKind::early_entry : SawKind::wet;
}

bool is_called_for(const Job& job, Operation operation) {
  return std::any_of(job.zones.begin(), job.zones.end(), [&](const Zone& zone) {
    return calls_for(zone.finish, operation) ||
           (zone.border && calls_for(zone.border->finish, operation));
  });
}

bool is_used(SawKind kind, const Job& job) {
  const auto& saws = job.pour.saws;
  return saws.empty() || std::find(saws.begin(), saws.end(), kind) != saws.end();
}

MapCell plastic_cell(const ColumnHistory& history, Operation operation, const PlannedPour& facts) {
  const CellWindow window = cell_window(history, facts.practice.window(operation), facts.practice);
  if (!window.opens_s || (window.closes_s && *window.closes_s <= *window.opens_s))
    return {true, {}, {}};
  return {true, window.opens_s, window.closes_s};
}

MapCell sawn_cell(const ColumnHistory& history, SawKind kind, std::size_t zone,
                  const PlannedPour& facts) {
  const auto opens_s = saw_opens_s(kind, history, facts.job.mix.aggregate, facts.practice);
  MapCell cell{true, opens_s, std::nullopt};
  for (const SawPlan& saw : facts.plan.zones[zone].saws) {
    if (saw.kind != kind || !saw.latest) continue;
    cell.closes_s = seconds_between(facts.run.weather.grid.start, *saw.latest);
  }
  if (cell.opens_s && cell.closes_s && *cell.closes_s <= *cell.opens_s) cell.opens_s.reset();
  return cell;
}

/// The cells of one zone. Cells that share a column have the same times.
std::vector<MapCell> cells_of(const MapChoice& choice, std::size_t zone, const PlannedPour& facts) {
  const Zone& described = facts.job.zones[zone];
  std::vector<MapCell> cells;
  for (const CellRun& cell : facts.run.zones[zone].cells) {
    const bool border = cell.cell.border && described.border;
    const auto operation =
        operation_on(choice, border ? described.border->finish : described.finish);
    const ColumnHistory& history = facts.run.histories[cell.history];
    if (!operation) {
      cells.emplace_back();
    } else if (is_saw(*operation)) {
      cells.push_back(sawn_cell(history, kind_of(*operation), zone, facts));
    } else {
      cells.push_back(plastic_cell(history, *operation, facts));
    }
  }
  return cells;
}

MapChoice choice_of(Operation operation) {
  return {
      std::string(operation_id(operation)), std::string(operation_words(operation)), operation, {}};
}

bool has_joints(const PlannedPour& facts) { return !facts.plan.cuts.cuts.empty(); }

}  // namespace

std::optional<Operation> operation_on(const MapChoice& choice, Finish finish) {
  if (!choice.operation) return main_operation(finish);
  if (is_saw(*choice.operation) || calls_for(finish, *choice.operation)) return choice.operation;
  return std::nullopt;
}

std::vector<MapChoice> map_choices(const PlannedPour& facts) {
  std::vector<MapChoice> choices{{"finish", "each zone's finish", std::nullopt, {}}};
  for (std::size_t i = 0; i < operation_count; ++i) {
    const auto operation = static_cast<Operation>(i);
    const bool saw = is_saw(operation);
    if (saw ? has_joints(facts) && is_used(kind_of(operation), facts.job)
            : is_called_for(facts.job, operation)) {
      choices.push_back(choice_of(operation));
    }
  }
  for (MapChoice& choice : choices) {
    for (std::size_t zone = 0; zone < facts.job.zones.size(); ++zone) {
      choice.zones.push_back(cells_of(choice, zone, facts));
    }
  }
  return choices;
}

}  // namespace slabtide
