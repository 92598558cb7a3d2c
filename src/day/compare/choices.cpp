#include "slabtide/day/compare/choices.h"

#include "admixture_choices.h"
#include "choice_list.h"
#include "concrete_choices.h"
#include "cover_choices.h"
#include "day_choices.h"
#include "load_choices.h"
#include "own_choice.h"

namespace slabtide {

Choices find_choices(const PlannedPour& ordered, const ChoiceFigures& figures) {
  const ChoiceContext context{ordered, figures};
  ChoiceList list(context);
  list.offer({ChoiceKind::as_ordered, "as ordered", {}, "leave it as it is ordered", {}});
  add_admixture_choices(context, list);
  add_concrete_choices(context, list);
  add_load_choices(context, list);
  add_start_choices(context, list);
  add_order_choice(context, list);
  add_crew_choices(context, list);
  add_shelter_choices(context, list);
  add_cover_choices(context, list);
  add_saw_choice(context, list);
  for (const OptionNote& note : ordered.job.options) add_own_choice(note, list);
  return list.take();
}

}  // namespace slabtide
