#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/practice/operation.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// What the map shows of one cell: whether the work is done there at all, and when it can be.
/// Seconds from the weather grid's start.
struct MapCell {
  bool works = false;
  std::optional<double> opens_s;
  std::optional<double> closes_s;
};

/// One thing to look at on the map. `zones` as in the job, each with an entry a cell.
struct MapChoice {
  std::string id;                      ///< of the operation, or "finish"
  std::string words;                   ///< "stamp"
  std::optional<Operation> operation;  ///< absent: for each cell what its finish is named for
  std::vector<std::vector<MapCell>> zones;
};

/// Each zone's finish first, then every operation that the job's finishes call for, in working
/// order, then the saws on hand (both kinds where none is).
std::vector<MapChoice> map_choices(const PlannedPour& facts);

/// The operation that is looked at where this finish is given: none where it is not done there.
std::optional<Operation> operation_on(const MapChoice& choice, Finish finish);

}  // namespace slabtide
