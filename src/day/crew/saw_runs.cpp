#include "saw_runs.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// A longer wait at the saw separates one run from the next (ours).
constexpr double wait_in_run_min = 15.0;

double minutes_between(UtcTime from, UtcTime to) {
  return seconds_between(from, to) / seconds_per_minute;
}

void add_limit(SawRun& run, const SawnCut& sawn, const PlannedCut& cut) {
  if (!cut.latest) return;
  const double slack_min = minutes_between(sawn.ends, *cut.latest);
  run.slack_min = run.has_limit ? std::min(run.slack_min, slack_min) : slack_min;
  run.has_limit = true;
}

}  // namespace

std::vector<SawRun> saw_runs(std::size_t zone, const CutPlan& cuts) {
  const auto kind = saw_of(cuts.choices[zone].way);
  if (!kind) return {};
  std::vector<SawRun> runs;
  bool in_run = false;
  const std::vector<SawnCut>& all = cuts.shift(*kind).cuts;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const SawnCut& sawn = all[i];
    const PlannedCut& cut = cuts.cuts[sawn.cut];
    const bool here = cut.zone == zone;
    if (here) {
      const bool goes_on =
          in_run && minutes_between(runs.back().end, sawn.starts) <= wait_in_run_min;
      if (!goes_on) runs.push_back({.start = sawn.starts, .end = sawn.ends, .first_cut = i});
      ++runs.back().cut_count;
      runs.back().end = sawn.ends;
      add_limit(runs.back(), sawn, cut);
    }
    in_run = here;
  }
  return runs;
}

double joint_length_m(const ZoneJoints& joints) {
  double length_m = 0.0;
  for (const Joint& joint : joints.joints) {
    length_m += std::hypot(joint.to.x_m - joint.from.x_m, joint.to.y_m - joint.from.y_m);
  }
  return length_m;
}

}  // namespace slabtide
