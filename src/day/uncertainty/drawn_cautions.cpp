#include "drawn_cautions.h"

#include <algorithm>
#include <utility>

#include "frost_days.h"
#include "lost_finish.h"

namespace slabtide {

namespace {

/// Before what comes later and what holds all day.
void add_in_order(std::vector<Caution>& cautions, Caution caution) {
  const auto later = std::find_if(cautions.begin(), cautions.end(), [&](const Caution& other) {
    return !other.at ? other.level == CautionLevel::note : *other.at > *caution.at;
  });
  cautions.insert(later, std::move(caution));
}

}  // namespace

void add_drawn_cautions(std::vector<Caution>& cautions, const Job& job, const DayPlan& plan,
                        const std::vector<std::optional<double>>& lost_chances,
                        const FrostDays& frost) {
  if (auto lost = lost_finish(plan.crew, lost_chances)) add_in_order(cautions, std::move(*lost));
  for (Caution& caution : frost_cautions(job, plan.zones, frost)) {
    add_in_order(cautions, std::move(caution));
  }
}

}  // namespace slabtide
