#include <algorithm>
#include <map>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "random_slab.h"
#include "slabtide/day/joints/saw_shift.h"

// What must hold for saws that are led through any list of cuts.

namespace slabtide {

namespace {

struct SawDay {
  Job job;
  std::vector<PlannedCut> cuts;
};

UtcTime minutes_in(double minutes) {
  return after_seconds(UtcTime(Date(2026, 5, 14), boost::posix_time::hours(8)), 60.0 * minutes);
}

SawDay random_day() {
  SawDay day;
  const int zones = *rc::gen::inRange(1, 5);
  for (int zone = 0; zone < zones; ++zone) {
    Zone slab = test::zone_named("slab", test::rectangle(0, 0, 3, 3));
    day.job.zones.push_back(slab);
    const int cuts = *rc::gen::inRange(0, 8);
    for (int i = 0; i < cuts; ++i) {
      PlannedCut cut;
      cut.zone = static_cast<std::size_t>(zone);
      cut.number = static_cast<std::size_t>(i) + 1;
      cut.cut.length_m = test::in_range(0.5, 12.0);
      cut.early_entry_opens = minutes_in(test::in_range(0, 300));
      if (*rc::gen::arbitrary<bool>()) cut.wet_opens = minutes_in(test::in_range(300, 600));
      if (*rc::gen::arbitrary<bool>()) cut.latest = minutes_in(test::in_range(100, 700));
      day.cuts.push_back(cut);
    }
  }
  return day;
}

}  // namespace

TEST_CASE("saws start nothing before it opens, are in one place at a time, and miss nothing") {
  CHECK(rc::check("saw shifts", [] {
    const SawDay day = random_day();
    const SawRules rules = default_practice().saw;
    for (const SawKind kind : kinds_of_saw) {
      const int saws = *rc::gen::inRange(1, 4);
      const std::vector<SawnCut> sawn = lead_saws(kind, saws, day.cuts, day.job, rules);
      const auto open =
          std::count_if(day.cuts.begin(), day.cuts.end(),
                        [kind](const PlannedCut& cut) { return cut.opens(kind).has_value(); });
      RC_ASSERT(static_cast<std::ptrdiff_t>(sawn.size()) == open);
      std::map<int, UtcTime> free_from;
      std::map<std::size_t, std::size_t> last_number;
      for (const SawnCut& cut : sawn) {
        const PlannedCut& planned = day.cuts[cut.cut];
        RC_ASSERT(cut.starts >= *planned.opens(kind));
        RC_ASSERT(cut.ends > cut.starts);
        RC_ASSERT(cut.saw >= 1 && cut.saw <= saws);
        if (free_from.contains(cut.saw)) RC_ASSERT(cut.starts >= free_from[cut.saw]);
        free_from[cut.saw] = cut.ends;
        RC_ASSERT(last_number[planned.zone] < planned.number);
        last_number[planned.zone] = planned.number;
        RC_ASSERT(cut.late == (planned.latest && cut.ends > *planned.latest));
      }
    }
  }));
}

TEST_CASE("the number of saws said to be needed makes every cut in time, and one fewer does not") {
  CHECK(rc::check("saws needed", [] {
    const SawDay day = random_day();
    const SawRules rules = default_practice().saw;
    const SawShift shift = plan_shift(SawKind::early_entry, day.cuts, day.job, rules);
    const auto late = [&](int saws) {
      const auto sawn = lead_saws(SawKind::early_entry, saws, day.cuts, day.job, rules);
      return std::any_of(sawn.begin(), sawn.end(), [](const SawnCut& cut) { return cut.late; });
    };
    if (!shift.saws_needed) return;
    RC_ASSERT(!late(*shift.saws_needed));
    if (*shift.saws_needed > 1) RC_ASSERT(late(*shift.saws_needed - 1));
  }));
}

}  // namespace slabtide
