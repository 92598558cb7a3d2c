#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/practice/operation.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// What the map shows for one cell: whether the work is done there, and when it can be. In seconds
/// from the start of the weather grid.
struct MapCell {
  bool works = false;
  std::optional<double> opens_s;
  std::optional<double> closes_s;
};

/// One choice of what the map shows. `zones` is parallel to the job's; each has one entry per cell.
struct MapChoice {
  std::string id;                      ///< id of the operation, or "finish"
  std::string words;                   ///< "stamp"
  std::optional<Operation> operation;  ///< absent: each cell's own main operation
  std::vector<std::vector<MapCell>> zones;
};

/// First each zone's finish, then every operation that the job's finishes need, in working order,
/// then the saws on hand (both kinds if there is none).
std::vector<MapChoice> map_choices(const PlannedPour& facts);

/// The operation that the choice shows for this finish; none if it is not done there.
std::optional<Operation> operation_on(const MapChoice& choice, Finish finish);

}  // namespace slabtide
