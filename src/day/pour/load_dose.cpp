#include "load_dose.h"

#include <algorithm>

#include <fmt/format.h>

namespace slabtide {

namespace {

/// "the field, the steps and the border".
std::string zones_words(const Job& job, const Load& load) {
  std::string words;
  for (std::size_t i = 0; i < load.fractions.size(); ++i) {
    const bool last = i + 1 == load.fractions.size();
    const char* between = i == 0 ? "" : last ? " and " : ", ";
    words += fmt::format("{}the {}", between, job.zones[load.fractions[i].zone].name);
  }
  return words;
}

}  // namespace

const std::vector<Admixture>& admixtures_of(const Job& job, const Load& load, const Zone& zone) {
  if (load.own_admixtures) return load.admixtures;
  return zone.admixtures ? *zone.admixtures : job.mix.admixtures;
}

bool is_dosed_in_part(const Job& job, const Load& load) {
  const auto& first = admixtures_of(job, load, job.zones[load.fractions.front().zone]);
  return std::any_of(load.fractions.begin(), load.fractions.end(), [&](const LoadShare& share) {
    return admixtures_of(job, load, job.zones[share.zone]) != first;
  });
}

std::string dosed_in_part_words(const Job& job, const Load& load) {
  return fmt::format(
      "load {} is for {}, which ask for different admixtures: a truck is dosed as a whole. Order "
      "a load for each, or the same for all of them",
      load.number, zones_words(job, load));
}

const Load* first_dosed_in_part(const Job& job, const OrderPlan& order) {
  const auto found = std::find_if(order.loads.begin(), order.loads.end(),
                                  [&job](const Load& load) { return is_dosed_in_part(job, load); });
  return found == order.loads.end() ? nullptr : &*found;
}

}  // namespace slabtide
