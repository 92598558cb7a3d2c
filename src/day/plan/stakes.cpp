#include "slabtide/day/plan/stakes.h"

#include <algorithm>
#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace slabtide {

namespace {

/// What comes of these is told by the minutes late, on the likely day and on others, or is a limit
/// by habit, which is a stop where it is in earnest, or say in which order to work; for themselves
/// they weigh little (ours).
constexpr std::array<std::string_view, 5> light{"short_window", "late_crew", "late_days",
                                                "discharge_limit", "saw_before_cover"};
constexpr double light_cost = 0.5;

double cost_of_code(const std::string& code, Loss loss) {
  const bool is_light = std::find(light.begin(), light.end(), code) != light.end();
  return is_light ? light_cost : caution_cost(loss);
}

/// The zone that a caution names, without the part of it that may follow.
std::string zone_of(const Caution& caution) {
  return caution.zone.substr(0, caution.zone.find(", "));
}

}  // namespace

double caution_cost(Loss loss) {
  constexpr std::array<double, loss_count> costs{4.0, 4.0, 2.0, 2.0, 1.5, 1.5};
  return costs.at(static_cast<std::size_t>(loss));
}

Stakes stakes_of(const std::vector<Caution>& cautions, std::size_t zones) {
  if (zones == 0) throw std::invalid_argument("stakes of a job without a zone");
  Stakes stakes;
  std::map<std::string, std::pair<Loss, std::set<std::string>>> zones_of_code;
  for (const Caution& caution : cautions) {
    if (caution.level == CautionLevel::stop) {
      ++stakes.stops.at(static_cast<std::size_t>(caution.loss));
    } else if (caution.level == CautionLevel::caution) {
      auto& [loss, named] = zones_of_code[caution.code];
      loss = caution.loss;
      named.insert(zone_of(caution));
    }
  }
  for (const auto& [code, found] : zones_of_code) {
    const auto& [loss, named] = found;
    ++stakes.cautions.at(static_cast<std::size_t>(loss));
    const double share = static_cast<double>(named.size()) / static_cast<double>(zones);
    stakes.caution_cost +=
        cost_of_code(code, loss) * (named.contains({}) ? 1.0 : std::min(1.0, share));
  }
  return stakes;
}

bool better(const Stakes& a, const Stakes& b) {
  return std::tie(a.stops, a.cautions) < std::tie(b.stops, b.cautions);
}

std::optional<Loss> worst_loss(const std::vector<Caution>& cautions) {
  const Caution* worst = nullptr;
  for (const Caution& caution : cautions) {
    if (caution.level == CautionLevel::note) continue;
    if (worst == nullptr || caution.level > worst->level ||
        (caution.level == worst->level && caution.loss < worst->loss)) {
      worst = &caution;
    }
  }
  return worst == nullptr ? std::nullopt : std::optional(worst->loss);
}

}  // namespace slabtide
