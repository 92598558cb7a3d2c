#pragma once

#include <utility>

#include "slabtide/report/words/plan_facts.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

// Planned days for tests of pages.

namespace slabtide::test {

class PageDay {
 public:
  explicit PageDay(Job job) : day_(std::move(job)) {}

  const PlannedPour& facts() const { return day_.pour(); }

 private:
  PlannedDay day_;
};

/// A stamped landing with a broomed border, shaded in the morning by a wall on its east side, and a
/// broomed pad in the open.
inline Job shaded_landing() {
  Zone landing = zone_named("landing", rectangle(-4.2, 0.0, 4.2, 3.6), Finish::stamp);
  landing.border = Border{0.3, Finish::broom};
  Job job = sample_job({landing, zone_named("pad", rectangle(-14.0, -8.0, 4.2, 3.6))});
  job.obstacles.push_back({"house", ObstacleKind::wall, {0, -9}, {0, 6}, 0.0, 5.5, 0.0});
  job.obstacles.push_back({"oak", ObstacleKind::tree, {-17, -2}, {}, 2.7, 9.0, 0.15});
  job.pour.saws = {SawKind::early_entry};
  return job;
}

/// One small broomed pad in the open.
inline Job open_pad() { return sample_job({zone_named("pad", rectangle(0, 0, 2.4, 2.4))}); }

inline constexpr const char* hostile_name = "<script>alert(1)</script> & \"west\" 東";

/// Fifteen pads in rows, with three finishes: more than a map names or one chart shows.
inline Job many_pads() {
  Job job = sample_job({});
  constexpr int rows = 3;
  constexpr int across = 5;
  for (int i = 0; i < rows * across; ++i) {
    const Finish finish =
        i % 3 == 0 ? Finish::stamp : (i % 3 == 1 ? Finish::broom : Finish::trowel);
    Zone zone = zone_named("bay " + std::to_string(i + 1),
                           rectangle(4.0 * (i % across), 4.0 * (i / across), 3.6, 3.6), finish);
    job.pour.placing_sequence.push_back(zone.name);
    job.zones.push_back(std::move(zone));
  }
  return job;
}

}  // namespace slabtide::test
