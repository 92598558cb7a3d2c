#pragma once

#include <array>

#include "slabtide/day/practice/task_kind.h"

// How fast a crew works and what it takes along, from data/practice.toml, where each number has its
// source; the user can change each of them.

namespace slabtide {

/// How one kind of work is done.
struct WorkRule {
  /// m2 or m per hour; for work on the whole job, jobs per hour. The rate of sawing is in SawRules.
  double rate_per_person_h = 0.0;
  int min_hands = 1;
  int max_hands = 1;  ///< more would get in each other's way
};

/// The hours of a working day.
struct WorkHours {
  double bull_float_within_min = 0.0;  ///< after placing, before bleed water comes up
  double idle_told_min = 0.0;          ///< a longer wait than this is mentioned
  double go_home_min = 0.0;            ///< during a longer wait than this people go home
  double next_day_from_h = 0.0;        ///< local clock, for washing and sealing
  double next_day_until_h = 0.0;       ///< no such work is started later
};

/// How a part is divided into pieces for the crew.
struct PieceRules {
  double area_m2 = 0.0;  ///< about what is done in one go
  int max = 1;
};

/// How much weight a surface takes inside its window.
struct TouchRules {
  double full_from_opens_factor = 0.0;       ///< multiplies the opening resistance
  double last_call_from_close_factor = 0.0;  ///< multiplies the closing resistance
};

/// How much area each supply covers.
struct Coverage {
  double release_powder_kg_m2 = 0.0;
  double release_liquid_l_m2 = 0.0;
  double surface_retarder_l_m2 = 0.0;
  double salt_kg_m2 = 0.0;
  double curing_compound_l_m2 = 0.0;
  double sealer_l_m2 = 0.0;  ///< per coat
  double sealer_coats = 0.0;
  double cover_factor = 0.0;  ///< plastic or blankets over area, to allow for laps
};

/// All crew rules; `work` is indexed by TaskKind.
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
