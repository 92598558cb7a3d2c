#include "slabtide/day/compare/choices.h"

#include "admixture_choices.h"
#include "choice_list.h"
#include "day_choices.h"
#include "own_choice.h"

namespace slabtide {

Choices find_choices(const Job& job, const PourRun& run, const DayPlan& plan,
                     const Practice& practice) {
  const ChoiceContext context{job, run, plan, practice.compare};
  ChoiceList list;
  list.add(ChoiceKind::as_ordered, "as ordered", "leave it as it is ordered", job);
  add_admixture_choices(context, list);
  add_start_choices(context, list);
  add_order_choice(context, list);
  add_crew_choices(context, list);
  add_shelter_choices(context, list);
  add_saw_choice(context, list);
  add_joined_choices(context, list);
  for (const OptionNote& note : job.options) add_own_choice(context, note, list);
  return list.take();
}

}  // namespace slabtide
