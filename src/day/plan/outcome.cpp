#include "slabtide/day/plan/outcome.h"

#include <algorithm>
#include <tuple>

namespace slabtide {

Outcome outcome_of(const std::vector<Caution>& cautions) {
  Outcome outcome;
  for (auto caution = cautions.begin(); caution != cautions.end(); ++caution) {
    if (caution->level == CautionLevel::note) continue;
    const bool counted = std::any_of(cautions.begin(), caution, [&](const Caution& before) {
      return before.code == caution->code && before.level == caution->level;
    });
    if (counted) continue;
    auto& counts = caution->level == CautionLevel::stop ? outcome.stops : outcome.cautions;
    ++counts[static_cast<std::size_t>(caution->loss)];
  }
  return outcome;
}

bool better(const Outcome& a, const Outcome& b) {
  return std::tie(a.stops, a.cautions) < std::tie(b.stops, b.cautions);
}

}  // namespace slabtide
