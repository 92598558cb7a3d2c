#include "slabtide/day/plan/caution.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include <fmt/format.h>

namespace slabtide {

namespace {

struct Stake {
  std::string_view code;
  Loss loss;
};

constexpr std::array stakes{Stake{"wet_cement", Loss::people},
                            Stake{"silica", Loss::people},
                            Stake{"thunder", Loss::people},
                            Stake{"heat", Loss::people},
                            Stake{"licensed_practice", Loss::slab},
                            Stake{"frozen_ground", Loss::slab},
                            Stake{"freezing", Loss::slab},
                            Stake{"cold_weather", Loss::slab},
                            Stake{"rain", Loss::slab},
                            Stake{"discharge_limit", Loss::slab},
                            Stake{"no_window", Loss::finish},
                            Stake{"after_plan", Loss::finish},
                            Stake{"late_crew", Loss::finish},
                            Stake{"late_days", Loss::finish},
                            Stake{"no_way_in", Loss::finish},
                            Stake{"short_window", Loss::finish},
                            Stake{"hot_concrete", Loss::finish},
                            Stake{"cold_concrete", Loss::finish},
                            Stake{"early_sheen", Loss::finish},
                            Stake{"crust", Loss::finish},
                            Stake{"wind_crust", Loss::finish},
                            Stake{"cover_in_the_way", Loss::finish},
                            Stake{"dew", Loss::finish},
                            Stake{"chloride_colour", Loss::finish},
                            Stake{"chloride_steel", Loss::crack},
                            Stake{"film_under_sealer", Loss::finish},
                            Stake{"evaporation_precautions", Loss::crack},
                            Stake{"evaporation_caution", Loss::crack},
                            Stake{"hot_weather", Loss::crack},
                            Stake{"dry_air", Loss::crack},
                            Stake{"saw_too_late", Loss::crack},
                            Stake{"saw_not_enough", Loss::crack},
                            Stake{"saw_before_cover", Loss::crack},
                            Stake{"joint_rule", Loss::crack},
                            Stake{"cracked_joint", Loss::crack},
                            Stake{"short_load", Loss::money},
                            Stake{"wet_sawing", Loss::money},
                            Stake{"dark", Loss::comfort},
                            Stake{"forecast_old", Loss::comfort},
                            Stake{"forecast_short", Loss::comfort}};

}  // namespace

std::string_view loss_id(Loss loss) {
  constexpr std::array<std::string_view, loss_count> ids{"people", "slab",  "finish",
                                                         "crack",  "money", "comfort"};
  return ids.at(static_cast<std::size_t>(loss));
}

Loss loss_of(std::string_view code) {
  const auto stake = std::find_if(stakes.begin(), stakes.end(),
                                  [code](const Stake& one) { return one.code == code; });
  if (stake == stakes.end()) {
    throw std::invalid_argument(fmt::format("no rule gives the caution \"{}\"", code));
  }
  return stake->loss;
}

std::string_view caution_level_id(CautionLevel level) {
  switch (level) {
    case CautionLevel::note:
      return "note";
    case CautionLevel::caution:
      return "caution";
    case CautionLevel::stop:
      return "stop";
  }
  return "caution";
}

}  // namespace slabtide
