#pragma once

#include <array>

#include "slabtide/day/practice/task_kind.h"

// How fast a crew works and what it takes along, from data/practice.toml: each number with
// its source there, each adjustable by the user.

namespace slabtide {

/// How one kind of work goes.
struct WorkRule {
  /// m2 or m an hour; for the whole job: jobs an hour. The saw's stands in SawRules.
  double rate_per_person_h = 0.0;
  int min_hands = 1;
  int max_hands = 1;  ///< more than these stand in each other's way
};

/// How a day's work is laid out.
struct WorkHours {
  double bull_float_within_min = 0.0;  ///< after placing, before the bleed water stands
  double idle_told_min = 0.0;          ///< a wait longer than this is told
  double go_home_min = 0.0;            ///< and one longer than this is not waited out on site
  double next_day_from_h = 0.0;        ///< local clock, for washing and sealing
  double next_day_until_h = 0.0;       ///< nothing of that is begun after
};

/// How a part is cut up for the crew.
struct PieceRules {
  double area_m2 = 0.0;  ///< about what is taken in one go
  int max = 1;
};

/// How heavily to work a surface inside its window.
struct TouchRules {
  double full_from_opens_factor = 0.0;       ///< times the opening resistance
  double last_call_from_close_factor = 0.0;  ///< times the closing resistance
};

/// What covers how much.
struct Coverage {
  double release_powder_kg_m2 = 0.0;
  double release_liquid_l_m2 = 0.0;
  double curing_compound_l_m2 = 0.0;
  double sealer_l_m2 = 0.0;  ///< a coat
  double sealer_coats = 0.0;
  double cover_factor = 0.0;  ///< plastic or blankets over the area, for laps
};

/// All of it; `work` by TaskKind.
struct CrewPractice {
  std::array<WorkRule, task_kind_count> work{};
  WorkHours hours;
  PieceRules pieces;
  TouchRules touch;
  Coverage coverage;

  WorkRule& rule(TaskKind kind) { return work[static_cast<std::size_t>(kind)]; }
  const WorkRule& rule(TaskKind kind) const { return work[static_cast<std::size_t>(kind)]; }
};

}  // namespace slabtide
