#include "hand_words.h"

#include <string_view>

namespace slabtide {

namespace {

std::string_view short_name(std::string_view name) {
  constexpr std::string_view unnamed = "finisher ";
  return name.starts_with(unnamed) ? name.substr(unnamed.size()) : name;
}

}  // namespace

std::string others_words(const CrewPlan& crew, std::size_t task, std::size_t me) {
  std::string others;
  for (const int one : crew.schedule.assignments[task].who) {
    const auto other = static_cast<std::size_t>(one);
    if (other == me) continue;
    if (!others.empty()) others += ", ";
    others += short_name(crew.people[other].name);
  }
  return others;
}

}  // namespace slabtide
