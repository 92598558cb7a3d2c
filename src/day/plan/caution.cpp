#include "slabtide/day/plan/caution.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include <fmt/format.h>

namespace slabtide {

namespace {

struct LossOfCode {
  std::string_view code;
  Loss loss;
};

constexpr std::array losses_of_codes{LossOfCode{"wet_cement", Loss::people},
                                     LossOfCode{"silica", Loss::people},
                                     LossOfCode{"wash_water", Loss::people},
                                     LossOfCode{"wash_off_hours", Loss::finish},
                                     LossOfCode{"thunder", Loss::people},
                                     LossOfCode{"heat", Loss::people},
                                     LossOfCode{"licensed_practice", Loss::slab},
                                     LossOfCode{"frozen_ground", Loss::slab},
                                     LossOfCode{"freezing", Loss::slab},
                                     LossOfCode{"frost_days", Loss::slab},
                                     LossOfCode{"cold_weather", Loss::slab},
                                     LossOfCode{"rain", Loss::slab},
                                     LossOfCode{"discharge_limit", Loss::slab},
                                     LossOfCode{"no_window", Loss::finish},
                                     LossOfCode{"after_plan", Loss::finish},
                                     LossOfCode{"late_crew", Loss::finish},
                                     LossOfCode{"late_days", Loss::finish},
                                     LossOfCode{"outside_hours", Loss::finish},
                                     LossOfCode{"no_way_in", Loss::finish},
                                     LossOfCode{"short_window", Loss::finish},
                                     LossOfCode{"hot_concrete", Loss::finish},
                                     LossOfCode{"cold_concrete", Loss::finish},
                                     LossOfCode{"early_sheen", Loss::finish},
                                     LossOfCode{"crust", Loss::finish},
                                     LossOfCode{"wind_crust", Loss::finish},
                                     LossOfCode{"cover_in_the_way", Loss::finish},
                                     LossOfCode{"dew", Loss::finish},
                                     LossOfCode{"chloride_colour", Loss::finish},
                                     LossOfCode{"chloride_steel", Loss::crack},
                                     LossOfCode{"film_under_sealer", Loss::finish},
                                     LossOfCode{"mixed_load", Loss::finish},
                                     LossOfCode{"bleed_water", Loss::finish},
                                     LossOfCode{"evaporation_precautions", Loss::crack},
                                     LossOfCode{"evaporation_caution", Loss::crack},
                                     LossOfCode{"hot_weather", Loss::crack},
                                     LossOfCode{"dry_air", Loss::crack},
                                     LossOfCode{"saw_too_late", Loss::crack},
                                     LossOfCode{"saw_not_enough", Loss::crack},
                                     LossOfCode{"saw_waits", Loss::crack},
                                     LossOfCode{"saw_before_cover", Loss::crack},
                                     LossOfCode{"joint_rule", Loss::crack},
                                     LossOfCode{"cracked_joint", Loss::crack},
                                     LossOfCode{"short_load", Loss::money},
                                     LossOfCode{"truck_waits", Loss::money},
                                     LossOfCode{"wet_sawing", Loss::money},
                                     LossOfCode{"dark", Loss::comfort},
                                     LossOfCode{"forecast_old", Loss::comfort},
                                     LossOfCode{"forecast_short", Loss::comfort},
                                     LossOfCode{"work_after_forecast", Loss::comfort}};

}  // namespace

std::string_view loss_id(Loss loss) {
  constexpr std::array<std::string_view, loss_count> ids{"people", "slab",  "finish",
                                                         "crack",  "money", "comfort"};
  return ids.at(static_cast<std::size_t>(loss));
}

Loss loss_of(std::string_view code) {
  const auto found = std::find_if(losses_of_codes.begin(), losses_of_codes.end(),
                                  [code](const LossOfCode& one) { return one.code == code; });
  if (found == losses_of_codes.end()) {
    throw std::invalid_argument(fmt::format("no rule gives the caution \"{}\"", code));
  }
  return found->loss;
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
