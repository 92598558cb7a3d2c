#include "choice_list.h"

#include <algorithm>

#include <fmt/format.h>

#include "day/pour/load_dose.h"
#include "job_change.h"

namespace slabtide {

bool ChoiceContext::fears(std::initializer_list<std::string_view> codes) const {
  return std::any_of(figures.fears.begin(), figures.fears.end(), [&codes](const Caution& caution) {
    return std::find(codes.begin(), codes.end(), caution.code) != codes.end();
  });
}

std::string day_signature(const Job& job) {
  std::string text = pour_signature(job) + fmt::format("crew {} saws", job.crew.finishers);
  for (const SawKind saw : {SawKind::early_entry, SawKind::wet}) {
    const auto& on_hand = job.pour.saws;
    if (std::find(on_hand.begin(), on_hand.end(), saw) != on_hand.end()) {
      text += fmt::format(" {}", static_cast<int>(saw));
    }
  }
  return text;
}

void ChoiceList::offer(OfferedChoice offered) {
  ChangedJob changed = with_change(context_.job, offered.change, context_.ordered.practice.placing);
  if (!changed.job) {
    leave_out(std::move(offered.label), std::move(changed.fault));
    return;
  }
  // A zone's dose needs loads of its own; who asks for it anyway is told by the plan.
  if (!offered.change.admixture_zones.empty() && offered.kind != ChoiceKind::own) {
    const OrderPlan order = plan_order(*changed.job, context_.ordered.practice.placing);
    if (const Load* load = first_dosed_in_part(*changed.job, order)) {
      leave_out(std::move(offered.label),
                fmt::format("load {} is for other zones too, and a truck is dosed as a whole",
                            load->number));
      return;
    }
  }
  keep(Choice{offered.kind, std::move(offered.label), std::move(offered.words),
              std::move(*changed.job), std::move(offered.brief), std::move(offered.change)});
}

void ChoiceList::add(ChoiceKind kind, std::string label, std::string words, Job job) {
  keep(Choice{kind, std::move(label), std::move(words), std::move(job), {}, std::nullopt});
}

void ChoiceList::keep(Choice choice) {
  const auto [same, is_new] = seen_.try_emplace(day_signature(choice.job), choice.label);
  if (is_new) {
    choices_.tried.push_back(std::move(choice));
  } else {
    leave_out(std::move(choice.label), fmt::format("the same as '{}'", same->second));
  }
}

void ChoiceList::leave_out(std::string label, std::string why) {
  choices_.left_out.push_back({std::move(label), std::move(why)});
}

}  // namespace slabtide
