#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slabtide/report/words/plan_facts.h"
#include "svg.h"

namespace slabtide {

/// A section of a zone that a page shows separately: the whole zone, one of its parts, or its
/// border.
struct ShownPart {
  std::size_t zone = 0;  ///< index into Job::zones
  const PartPlan* plan = nullptr;
  Finish finish = Finish::broom;
  std::string json;   ///< pointer to it in the plan's JSON
  std::string title;  ///< within its zone: "all of it", "first 20 ft", "border"
};

/// All of a zone, without its border.
ShownPart whole_of(const PlannedPour& facts, std::size_t zone);

/// The parts of a zone, or the whole zone if it has none, then its border.
std::vector<ShownPart> parts_of(const PlannedPour& facts, std::size_t zone);

/// The parts of all zones, in placing order.
std::vector<ShownPart> all_parts(const PlannedPour& facts);

/// "landing, outer strip"; only the zone's name if the zone is shown as a whole.
std::string place_words(const ShownPart& part, const Job& job);

/// The element with the text in it, of which the truck sheet shows long names of zones cut short.
Element with_names(Element element, std::string_view text, const Job& job);
/// The same for a zone or one of its parts.
Element named_place(const std::string& place, const Job& job);

/// A window and the JSON pointer to it; no window if the part has none for the operation.
struct ShownWindow {
  const OperationWindow* window = nullptr;
  std::string json;

  std::string at(const char* key) const { return json + "/" + key; }
};

ShownWindow window_of(const ShownPart& part, Operation operation);

/// ZonePlan::late_window.
ShownWindow late_window_of(const PlannedPour& facts, std::size_t zone, Operation operation);

/// True if the window opens and does not close before that.
bool can_be_done(const OperationWindow& window);

}  // namespace slabtide
