#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// A stretch of a zone that a page shows by itself: the whole zone, one of its parts, its border.
struct ShownPart {
  std::size_t zone = 0;  ///< index into Job::zones
  const PartPlan* plan = nullptr;
  Finish finish = Finish::broom;
  std::string json;   ///< pointer to it in the plan's JSON
  std::string title;  ///< within its zone: "all of it", "first 20 ft", "border"
};

/// The parts of a zone, or the whole where it behaves as one, then its border.
std::vector<ShownPart> parts_of(const PlannedPour& facts, std::size_t zone);

/// Those of all zones, in the order they are placed.
std::vector<ShownPart> all_parts(const PlannedPour& facts);

/// "landing, outer strip"; the zone's name alone where it is shown whole.
std::string place_words(const ShownPart& part, const Job& job);

/// A window and the pointer to it; no window where the part has none for the operation.
struct ShownWindow {
  const OperationWindow* window = nullptr;
  std::string json;

  std::string at(const char* key) const { return json + "/" + key; }
};

ShownWindow window_of(const ShownPart& part, Operation operation);

/// It opens, closes, and not the wrong way round.
bool can_be_done(const OperationWindow& window);

}  // namespace slabtide
