#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/job/model/job.h"

// What finished pours have shown of a mix: a file that grows by `slabtide learn`.

namespace slabtide {

/// One finished pour.
struct BookedPour {
  std::string job;
  std::string site;
  Date date;
  double set_factor = 1.0;      ///< set times noted over those of the mix as described
  int readings = 0;             ///< of the setting, that say so
  std::optional<double> air_k;  ///< read on site over the forecast
  /// Of each event noted, minutes after the hour that the plan had for it.
  std::vector<double> late_min;
};

/// The pours of one mix, in the order they were learned.
struct BookedMix {
  std::string name;
  std::vector<BookedPour> pours;
};

/// All mixes, by the names that jobs give them.
struct MixBook {
  std::vector<BookedMix> mixes;

  const BookedMix* find(std::string_view name) const;
  /// Puts the pour in, in place of the same job's at the same site on the same day.
  void put(const std::string& mix, BookedPour pour);
};

/// What to expect of the next pour. Few pours say little: the mean of the logarithms is drawn
/// toward 0 by n s^2 / (n s^2 + e^2), with s how far mixes lie from their description and e how
/// far one pour lies from its mix, readings' errors included.
/// What is left of s is s e / sqrt(n s^2 + e^2).
/// Idealises: both normal in the logarithm, all pours alike. Status: ours.
/// Empty where no pour has a reading of the setting.
std::optional<LearnedSet> learned_set(const BookedMix& mix);

/// Standard deviation of the pours' factors about their mean, a share; empty for one pour.
std::optional<double> set_factor_spread(const BookedMix& mix);

/// The site's air over its forecasts, from the pours of every mix at it that have read it: their
/// mean, drawn toward 0 as `learned_set` is. Idealises: the same at every hour and season.
/// Status: ours. Empty where none has, or the site has no name.
std::optional<LearnedAir> learned_air(const MixBook& book, std::string_view site);

/// TOML; findings with line and column.
Parsed<MixBook> read_mix_book(std::string_view text);

}  // namespace slabtide
