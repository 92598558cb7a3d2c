#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/caution.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// A caution as people read it: one entry for all places where the same is to be watched for.
struct ToldCaution {
  std::vector<std::size_t> indexes;  ///< of those merged in it, in the list of all cautions
  const Caution* first = nullptr;
  std::string zone;  ///< of the first; empty for the whole job
  std::string text;  ///< the first's, with the other places and their times
  /// Whether it is told at once; more than a few nobody reads, the rest and notes are folded away.
  bool at_once = false;

  bool merged() const { return indexes.size() > 1; }
};

/// What a caution says to do, with the colon before it; empty if it says nothing of that.
std::string_view remedy_of(std::string_view text);

inline constexpr std::size_t every_place = 1000;

/// More cautions than these nobody reads; the rest is folded away, or only named (ours).
inline constexpr std::size_t max_told_cautions = 7;
/// Of a caution's places so many beside the first are named in its sentence (ours).
inline constexpr std::size_t max_told_places = 4;

/// The cautions that ask for the same, merged, and the short windows of a zone; the worst first:
/// what stops the work before what wants care, a lost slab before a lost finish, then by time, and
/// the shortest of short windows. Of the other places at most `max_others` are named, the rest are
/// counted. `cautions` must outlive the result.
std::vector<ToldCaution> told_cautions(const std::vector<Caution>& cautions, const Job& job,
                                       std::size_t max_others = every_place);

}  // namespace slabtide
