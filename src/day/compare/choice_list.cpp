#include "choice_list.h"

#include <algorithm>

#include <fmt/format.h>

namespace slabtide {

namespace {

/// The pour's signature plus the crew and the saws.
std::string full_signature(const Job& job) {
  std::string text = pour_signature(job) + fmt::format("crew {} saws", job.crew.finishers);
  for (const SawKind saw : {SawKind::early_entry, SawKind::wet}) {
    const auto& on_hand = job.pour.saws;
    if (std::find(on_hand.begin(), on_hand.end(), saw) != on_hand.end()) {
      text += fmt::format(" {}", static_cast<int>(saw));
    }
  }
  return text;
}

}  // namespace

void ChoiceList::add(ChoiceKind kind, std::string label, std::string words, Job job) {
  const auto [same, is_new] = seen_.try_emplace(full_signature(job), label);
  if (is_new) {
    choices_.tried.push_back({kind, std::move(label), std::move(words), std::move(job)});
  } else {
    leave_out(std::move(label), fmt::format("the same as '{}'", same->second));
  }
}

void ChoiceList::leave_out(std::string label, std::string why) {
  choices_.left_out.push_back({std::move(label), std::move(why)});
}

}  // namespace slabtide
