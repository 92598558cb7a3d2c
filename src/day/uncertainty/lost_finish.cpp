#include "lost_finish.h"

#include <fmt/format.h>

#include "core/rounded.h"
#include "told_loss.h"

namespace slabtide {

std::optional<Caution> lost_finish(const CrewPlan& crew,
                                   const std::vector<std::optional<double>>& lost_chances) {
  std::optional<std::size_t> worst;
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    if (!makes_the_finish(crew.tasks[i].kind)) continue;
    if (crew.schedule.assignments[i].late_min > finish_lost_min) return std::nullopt;
    const double chance = lost_chances[i].value_or(0.0);
    if (chance < told_loss_fraction) continue;
    if (!worst || rounded(chance) > rounded(*lost_chances[*worst])) worst = i;
  }
  if (!worst) return std::nullopt;
  const Task& task = crew.tasks[*worst];
  const std::string part = task.part.empty() ? std::string() : fmt::format(" ({})", task.part);
  const bool too_often = *lost_chances[*worst] >= lost_too_often_fraction;
  return Caution{
      "late_days",
      too_often ? "finish often missed" : "finish may be missed",
      too_often ? CautionLevel::stop : CautionLevel::caution,
      loss_of("late_days"),
      task.zone,
      crew.starts[*worst],
      std::nullopt,
      fmt::format("on {:.0f} days in 100 the {}{} is more than {} min late and the finish lost: "
                  "more hands, a retarder, or less at a time",
                  100.0 * *lost_chances[*worst], task_kind_words(task.kind), part, finish_lost_min),
      "worked out from this plan"};
}

}  // namespace slabtide
