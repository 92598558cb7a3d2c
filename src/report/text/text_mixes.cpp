#include "text_mixes.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/decimals.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr double one_in_ten_z = 1.2816;  // standard deviations; one value in ten is further above

std::string counted(std::size_t count, std::string_view what) {
  return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

std::string factor_words(const BookedMix& mix) {
  const auto learned = learned_set(mix);
  if (!learned) return "no reading of its setting yet";
  std::string words =
      fmt::format("plans multiply its set times by {:.2f}, give or take {}", learned->set_factor,
                  percent_words(std::expm1(one_in_ten_z * learned->log_deviation)));
  if (const auto spread = set_factor_spread(mix)) {
    words += fmt::format("; from pour to pour they differ by {}", percent_words(*spread));
  }
  return words;
}

/// Over all events of the mix's pours: the mean, and the minutes within which nine in ten were.
std::string error_words(const BookedMix& mix) {
  std::vector<double> off;
  double sum = 0.0;
  for (const BookedPour& pour : mix.pours) {
    for (const double late : pour.late_min) {
      sum += late;
      off.push_back(std::abs(late));
    }
  }
  if (off.empty()) return "no event noted yet";
  std::sort(off.begin(), off.end());
  constexpr double nine_in_ten = 0.9;
  const auto place =
      static_cast<std::size_t>(std::ceil(nine_in_ten * static_cast<double>(off.size())));
  const long mean = std::lround(sum / static_cast<double>(off.size()));
  return fmt::format("{}: {} min {} than planned on average, nine in ten within {:.0f} min",
                     counted(off.size(), "event"), std::abs(mean), mean < 0 ? "earlier" : "later",
                     off[place - 1]);
}

std::string site_lines(const BookedMix& mix, const TextStyle& style) {
  std::set<std::string> sites;
  for (const BookedPour& pour : mix.pours) sites.insert(pour.site);
  std::string text;
  for (const std::string& site : sites) {
    const auto pours = static_cast<std::size_t>(
        std::count_if(mix.pours.begin(), mix.pours.end(),
                      [&site](const BookedPour& pour) { return pour.site == site; }));
    text += style.paragraph(fmt::format("{}: {}", site, counted(pours, "pour")), 2, 4);
  }
  return text;
}

/// "+0.9 °F (+0.5 °C)".
std::string difference_words(double k) {
  return fmt::format("{:+.1f} °F ({:+.1f} °C)", tenths(fahrenheit_from_kelvin_difference(k)),
                     tenths(k));
}

std::string air_lines(const MixBook& book, const TextStyle& style) {
  std::set<std::string> sites;
  for (const BookedMix& mix : book.mixes) {
    for (const BookedPour& pour : mix.pours) sites.insert(pour.site);
  }
  std::string text;
  for (const std::string& site : sites) {
    const auto air = learned_air(book, site);
    if (!air) continue;
    text += style.paragraph(
        fmt::format("{}: {} against its forecasts on average, {}; plans change them by {}", site,
                    difference_words(air->mean_k),
                    counted(static_cast<std::size_t>(air->pours), "pour"),
                    difference_words(air->air_k)),
        2, 4);
  }
  return text;
}

}  // namespace

std::string text_mixes(const MixBook& book, const TextStyle& style) {
  std::string text;
  for (const BookedMix& mix : book.mixes) {
    if (!text.empty()) text += "\n";
    text += style.heading(mix.name) + "  " + counted(mix.pours.size(), "pour") + "\n";
    text += style.paragraph(factor_words(mix), 2, 4) + style.paragraph(error_words(mix), 2, 4);
    text += site_lines(mix, style);
  }
  const std::string air = air_lines(book, style);
  if (!air.empty()) text += fmt::format("\n{}\n{}", style.heading("Air at the sites"), air);
  return style.finished(text);
}

}  // namespace slabtide
