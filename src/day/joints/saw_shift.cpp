#include "slabtide/day/joints/saw_shift.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <stdexcept>

#include "slabtide/core/units.h"
#include "slabtide/day/windows/saw_plan.h"

namespace slabtide {

namespace {

/// More saws than this are not considered for one job.
constexpr int max_saws = 4;

/// One zone's remaining cuts, in its own order.
struct Queue {
  std::vector<std::size_t> cuts;
  std::size_t made = 0;
  UtcTime last_start{};  ///< of the previous cut

  bool empty() const { return made == cuts.size(); }
  std::size_t head() const { return cuts[made]; }
};

/// Which of several cuts that can start at the same time goes first.
enum class Taste { stay_in_zone, due_first };

class Lead {
 public:
  Lead(SawKind kind, int saws, Taste taste, const std::vector<PlannedCut>& cuts, const Job& job,
       const SawRules& rules)
      : kind_(kind),
        taste_(taste),
        cuts_(cuts),
        job_(job),
        rules_(rules),
        queues_(job.zones.size()),
        zone_of_saw_(static_cast<std::size_t>(saws)) {
    std::optional<UtcTime> first;
    for (std::size_t i = 0; i < cuts.size(); ++i) {
      if (!cuts[i].opens(kind)) continue;
      queues_[cuts[i].zone].cuts.push_back(i);
      first = std::min(first.value_or(*cuts[i].opens(kind)), *cuts[i].opens(kind));
    }
    free_.assign(static_cast<std::size_t>(saws), first.value_or(UtcTime{}));
    for (Queue& queue : queues_) queue.last_start = free_.front();
  }

  std::vector<SawnCut> all() {
    std::vector<SawnCut> sawn;
    while (Queue* queue = next_queue()) sawn.push_back(make(*queue));
    return sawn;
  }

 private:
  std::vector<UtcTime>::iterator free_saw() { return std::min_element(free_.begin(), free_.end()); }

  UtcTime starts(const Queue& queue) {
    return std::max({*cuts_[queue.head()].opens(kind_), *free_saw(), queue.last_start});
  }

  /// A cut without a limit is due last.
  static bool due_before(const PlannedCut& a, const PlannedCut& b) {
    if (!a.latest || !b.latest) return a.latest.has_value() && !b.latest;
    return *a.latest < *b.latest;
  }

  bool is_where_saw_is(const Queue& queue) {
    const auto saw = static_cast<std::size_t>(free_saw() - free_.begin());
    return zone_of_saw_[saw] == cuts_[queue.head()].zone;
  }

  bool goes_before(const Queue& a, const Queue& b) {
    const UtcTime start_a = starts(a);
    const UtcTime start_b = starts(b);
    if (start_a != start_b) return start_a < start_b;
    if (taste_ == Taste::stay_in_zone && is_where_saw_is(a) != is_where_saw_is(b)) {
      return is_where_saw_is(a);
    }
    return due_before(cuts_[a.head()], cuts_[b.head()]);
  }

  Queue* next_queue() {
    Queue* best = nullptr;
    for (Queue& queue : queues_) {
      if (!queue.empty() && (best == nullptr || goes_before(queue, *best))) best = &queue;
    }
    return best;
  }

  SawnCut make(Queue& queue) {
    const auto saw = free_saw();
    const PlannedCut& planned = cuts_[queue.head()];
    SawnCut cut;
    cut.cut = queue.head();
    cut.saw = static_cast<int>(saw - free_.begin()) + 1;
    cut.starts = starts(queue);
    cut.ends =
        after_seconds(cut.starts, cut_minutes(planned.cut.length_m, rules_) * seconds_per_minute);
    cut.depth_m = saw_depth_m(kind_, job_.zones[planned.zone].thickness_m, rules_);
    cut.late = planned.latest && cut.ends > *planned.latest;
    *saw = cut.ends;
    zone_of_saw_[static_cast<std::size_t>(cut.saw - 1)] = planned.zone;
    queue.last_start = cut.starts;
    ++queue.made;
    return cut;
  }

  SawKind kind_;
  Taste taste_;
  const std::vector<PlannedCut>& cuts_;
  const Job& job_;
  const SawRules& rules_;
  std::vector<Queue> queues_;
  std::vector<UtcTime> free_;
  std::vector<std::optional<std::size_t>> zone_of_saw_;  ///< where each saw made its last cut
};

std::ptrdiff_t late_cuts(const std::vector<SawnCut>& sawn) {
  return std::count_if(sawn.begin(), sawn.end(), [](const SawnCut& cut) { return cut.late; });
}

void check(int saws, const std::vector<PlannedCut>& cuts, const Job& job, const SawRules& rules) {
  if (saws < 1) throw std::invalid_argument("no saw to lead");
  if (!(rules.speed_m_h > 0.0)) throw std::invalid_argument("a saw without speed");
  for (const PlannedCut& cut : cuts) {
    if (cut.zone >= job.zones.size()) throw std::invalid_argument("a cut of no zone");
    if (!(cut.cut.length_m > 0.0)) throw std::invalid_argument("a cut of no length");
  }
}

}  // namespace

double cut_minutes(double length_m, const SawRules& saw) {
  return saw.set_up_min + length_m / saw.speed_m_h * minutes_per_hour;
}

std::vector<SawnCut> lead_saws(SawKind kind, int saws, const std::vector<PlannedCut>& cuts,
                               const Job& job, const SawRules& rules) {
  check(saws, cuts, job, rules);
  std::vector<SawnCut> staying = Lead(kind, saws, Taste::stay_in_zone, cuts, job, rules).all();
  if (late_cuts(staying) == 0) return staying;
  std::vector<SawnCut> hurrying = Lead(kind, saws, Taste::due_first, cuts, job, rules).all();
  return late_cuts(hurrying) < late_cuts(staying) ? hurrying : staying;
}

SawShift plan_shift(SawKind kind, const std::vector<PlannedCut>& cuts, const Job& job,
                    const SawRules& rules) {
  SawShift shift;
  shift.kind = kind;
  shift.on_hand =
      std::find(job.pour.saws.begin(), job.pour.saws.end(), kind) != job.pour.saws.end();
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    if (!cuts[i].opens(kind)) shift.never_open.push_back(i);
  }
  for (int saws = 1; saws <= max_saws; ++saws) {
    std::vector<SawnCut> sawn = lead_saws(kind, saws, cuts, job, rules);
    const bool in_time = late_cuts(sawn) == 0;
    if (saws == 1) shift.cuts = std::move(sawn);
    if (!in_time || !shift.never_open.empty()) continue;
    shift.saws_needed = saws;
    break;
  }
  return shift;
}

}  // namespace slabtide
