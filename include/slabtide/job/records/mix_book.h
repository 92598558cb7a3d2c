#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/job/model/job.h"

// What finished pours have shown about a mix, in a file that `slabtide learn` extends.

namespace slabtide {

/// One finished pour.
struct BookedPour {
  std::string job;
  std::string site;
  Date date;
  double set_factor = 1.0;      ///< set times noted over those computed for the mix as described
  int readings = 0;             ///< number of set observations it is based on
  std::optional<double> air_k;  ///< air measured on site minus the forecast
  /// For each event noted, how many minutes later it was than planned.
  std::vector<double> late_min;
};

/// The pours of one mix, in the order they were learned.
struct BookedMix {
  std::string name;
  std::vector<BookedPour> pours;
};

/// All mixes, by the names used in jobs.
struct MixBook {
  std::vector<BookedMix> mixes;

  const BookedMix* find(std::string_view name) const;
  /// Adds the pour, replacing one of the same job at the same site on the same day.
  void put(const std::string& mix, BookedPour pour);
};

/// What to expect of the next pour. A few pours say little: the mean of the logarithms is shrunk
/// toward 0 by the factor n s^2 / (n s^2 + e^2), with s the spread of mixes around their
/// description and e the spread of single pours around their mix, observation errors included. The
/// uncertainty that remains of s is s e / sqrt(n s^2 + e^2).
/// Idealises: both normal in the logarithm, all pours equally reliable. Status: ours.
/// Empty if no pour has an observation of the set.
std::optional<LearnedSet> learned_set(const BookedMix& mix);

/// Standard deviation of the pours' factors about their mean, as a fraction; empty for one pour.
std::optional<double> set_factor_spread(const BookedMix& mix);

/// The difference between the site's air and its forecasts, from pours of any mix there that
/// measured it: their mean, shrunk toward 0 as in `learned_set`. Idealises: the same at every hour
/// and season. Status: ours. Empty if no pour measured it, or the site has no name.
std::optional<LearnedAir> learned_air(const MixBook& book, std::string_view site);

/// Reads the book's TOML text; findings have line and column.
Parsed<MixBook> read_mix_book(std::string_view text);

}  // namespace slabtide
