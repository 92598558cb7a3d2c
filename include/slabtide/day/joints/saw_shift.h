#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/joints/cut.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The kinds of saw, in the order of their values.
inline constexpr std::array kinds_of_saw{SawKind::early_entry, SawKind::wet};

/// A cut of a zone and when it may be made, by whichever saw is free.
struct PlannedCut {
  std::size_t zone = 0;    ///< index into Job::zones
  std::size_t number = 1;  ///< place in the zone's working order, from 1
  Cut cut;
  /// When all the concrete along it can be sawn; absent if the forecast ends before.
  std::optional<UtcTime> early_entry_opens;
  std::optional<UtcTime> wet_opens;
  std::optional<UtcTime> stress_limit;   ///< of the piece in which it is cut, anywhere along the
                                         ///< cut
  std::optional<UtcTime> surface_limit;  ///< the trade's limit
  std::optional<UtcTime> latest;         ///< the earlier of the two: the cut must be finished by
                                         ///< then

  const std::optional<UtcTime>& opens(SawKind kind) const {
    return kind == SawKind::early_entry ? early_entry_opens : wet_opens;
  }
};

/// A cut and when a saw makes it.
struct SawnCut {
  std::size_t cut = 0;  ///< index into the planned cuts
  int saw = 1;
  UtcTime starts;
  UtcTime ends;
  double depth_m = 0.0;
  bool late = false;  ///< not finished by its latest time
  /// The crew's task by which it is made, once a crew is planned (`worked_shift`).
  std::optional<std::size_t> task = std::nullopt;
};

/// All cuts made with one kind of saw.
struct SawShift {
  SawKind kind = SawKind::early_entry;
  bool on_hand = false;
  std::vector<SawnCut> cuts;  ///< made with one saw, in the order in which they are made
  /// Cuts (by index) that no saw of this kind can start before the forecast ends.
  std::vector<std::size_t> never_open;
  /// How many saws of this kind, working together, make every cut in time; absent if no number
  /// does.
  std::optional<int> saws_needed;

  bool one_is_enough() const { return saws_needed && *saws_needed <= 1; }
};

/// Minutes of sawing for one cut.
double cut_minutes(double length_m, const SawRules& saw);

/// Leads `saws` saws of one kind, working together, through the cuts: always to the cut that can
/// start first, keeping each zone's order. If several can start first, one in the zone where the
/// saw is, unless going to the one due first leaves fewer late. Error: std::invalid_argument for no
/// saws, a saw without speed, and a cut with an invalid zone or length.
std::vector<SawnCut> lead_saws(SawKind kind, int saws, const std::vector<PlannedCut>& cuts,
                               const Job& job, const SawRules& rules);

/// All cuts with one saw of a kind, and how many saws would make them in time. Errors as for
/// `lead_saws`.
SawShift plan_shift(SawKind kind, const std::vector<PlannedCut>& cuts, const Job& job,
                    const SawRules& rules);

}  // namespace slabtide
