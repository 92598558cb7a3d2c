#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/joints/cut_order.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// In the order of their values.
inline constexpr std::array kinds_of_saw{SawKind::early_entry, SawKind::wet};

/// A cut of a zone and when it may be made, whichever saw is free.
struct PlannedCut {
  std::size_t zone = 0;    ///< index into Job::zones
  std::size_t number = 1;  ///< working order in its zone, from 1
  Cut cut;
  /// When all the concrete along it takes the saw; absent where the forecast ends before.
  std::optional<UtcTime> early_entry_opens;
  std::optional<UtcTime> wet_opens;
  std::optional<UtcTime> stress_limit;   ///< of the piece it is cut in, anywhere along it
  std::optional<UtcTime> surface_limit;  ///< the trade's limit
  std::optional<UtcTime> latest;         ///< the earlier of the two: sawn through by then

  const std::optional<UtcTime>& opens(SawKind kind) const {
    return kind == SawKind::early_entry ? early_entry_opens : wet_opens;
  }
};

/// A cut with a saw put to it.
struct SawnCut {
  std::size_t cut = 0;  ///< index into the cuts
  int saw = 1;
  UtcTime starts;
  UtcTime ends;
  double depth_m = 0.0;
  bool late = false;  ///< not through by its latest
};

/// All cuts made with one kind of saw.
struct SawShift {
  SawKind kind = SawKind::early_entry;
  bool on_hand = false;
  std::vector<SawnCut> cuts;  ///< with one saw, in the order they are made
  /// Cuts (index into the cuts) that no saw of this kind can start before the forecast ends.
  std::vector<std::size_t> never_open;
  /// How many saws of the kind, at work together, make every cut in time; absent where no
  /// number does.
  std::optional<int> saws_needed;

  bool one_is_enough() const { return saws_needed && *saws_needed <= 1; }
};

/// Minutes at the saw for one cut.
double cut_minutes(double length_m, const SawRules& saw);

/// `saws` saws of one kind, at work together, led through the cuts: always to the cut that can
/// start first, each zone's own order kept; of several to one in the zone the saw is in, unless
/// going to the one due first leaves fewer late.
/// Error: std::invalid_argument for no saw, a saw without speed, and a cut of no zone or no length.
std::vector<SawnCut> lead_saws(SawKind kind, int saws, const std::vector<PlannedCut>& cuts,
                               const Job& job, const SawRules& rules);

/// All cuts with one saw of a kind, and how many of them would be in time. Errors as for
/// `lead_saws`.
SawShift plan_shift(SawKind kind, const std::vector<PlannedCut>& cuts, const Job& job,
                    const SawRules& rules);

}  // namespace slabtide
