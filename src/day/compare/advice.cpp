#include "slabtide/day/compare/advice.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "day_choices.h"
#include "job/model/wording.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/weather/sky/sun.h"

namespace slabtide {

namespace {

/// Less than this is not late (ours).
constexpr double told_less_min = 0.5;
/// So much more or less of the finishing in the dark is told (ours).
constexpr double told_dark_min = 15.0;
/// More stops or cautions than these are not named one by one (ours).
constexpr std::size_t max_named = 3;

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

std::string stops_words(int stops) {
  return fmt::format("{} stop{}", stops, stops == 1 ? "" : "s");
}

/// "nothing is late", "34 min late on average, 1 h 53 min on a bad day"; without sampled days
/// "34 min late".
std::string late_words(const ChoiceFigures& figures) {
  const double worst =
      std::max({figures.minutes_late, figures.expected_late_min, figures.bad_day_late_min});
  if (worst < told_less_min) return "nothing is late";
  if (!figures.lost_fraction) return duration_words(figures.minutes_late) + " late";
  return fmt::format("{} late on average, {} on a bad day",
                     duration_words(figures.expected_late_min),
                     duration_words(figures.bad_day_late_min));
}

/// "frost before it is strong, fast drying", of those that `other` does not have.
std::string titles(const std::vector<Caution>& fears, CautionLevel level,
                   const std::vector<Caution>& other = {}) {
  std::vector<std::string> named;
  for (const Caution& caution : fears) {
    const auto same = [&caution](const Caution& one) {
      return one.title == caution.title && one.level == caution.level;
    };
    if (caution.level != level || std::any_of(other.begin(), other.end(), same)) continue;
    if (std::find(named.begin(), named.end(), caution.title) == named.end()) {
      named.push_back(caution.title);
    }
  }
  std::string text;
  for (std::size_t i = 0; i < std::min(named.size(), max_named); ++i) {
    text += (i == 0 ? "" : ", ") + named[i];
  }
  if (named.size() > max_named) text += fmt::format(" and {} more", named.size() - max_named);
  return text;
}

bool is_late(const ChoiceFigures& figures, const CompareRules& rules) {
  return figures.expected_late_min > rules.worth_min || figures.bad_day_late_min > rules.worth_min;
}

/// What speaks against a choice that runs less late than the best on the day as forecast.
std::string against_words(const ComparedChoice& other, const ComparedChoice& best,
                          const CompareRules& rules) {
  const ChoiceFigures& it = other.figures;
  if (it.stops > best.figures.stops) return fmt::format("runs into {}", stops_words(it.stops));
  if (it.dark_min - best.figures.dark_min >= told_dark_min) {
    return fmt::format("has {} of the finishing in the dark", duration_words(it.dark_min));
  }
  if (it.expected_late_min >= best.figures.expected_late_min + rules.worth_min) {
    return fmt::format("is {} late on average", duration_words(it.expected_late_min));
  }
  if (it.bad_day_late_min >= best.figures.bad_day_late_min + rules.worth_min) {
    return fmt::format("is {} late on a bad day", duration_words(it.bad_day_late_min));
  }
  const std::string more = titles(it.fears, CautionLevel::caution, best.figures.fears);
  return more.empty() ? "is more trouble than that is worth" : "brings " + more;
}

/// The choice that `minutes` makes the least late, if that is less than the best is, and what
/// speaks against it; empty if there is none.
std::string instead_words(const Comparison& comparison, const CompareRules& rules,
                          double ChoiceFigures::*minutes, std::string_view when) {
  const ComparedChoice& best = comparison.choices[comparison.best];
  const auto least = std::min_element(
      comparison.choices.begin(), comparison.choices.end(),
      [minutes](const auto& a, const auto& b) { return a.figures.*minutes < b.figures.*minutes; });
  if (std::lround(least->figures.*minutes) >= std::lround(best.figures.*minutes)) return {};
  return fmt::format(" {} is less late {} ({}), but {}.", capital(least->choice.label), when,
                     duration_words(least->figures.*minutes), against_words(*least, best, rules));
}

/// Why another that is less late, on the day as forecast or on a bad one, does not lead.
std::string instead_words(const Comparison& comparison, const CompareRules& rules) {
  std::string words =
      instead_words(comparison, rules, &ChoiceFigures::minutes_late, "on the day as forecast");
  if (words.empty()) {
    words = instead_words(comparison, rules, &ChoiceFigures::expected_late_min, "on average");
  }
  if (words.empty()) {
    words = instead_words(comparison, rules, &ChoiceFigures::bad_day_late_min, "on a bad day");
  }
  return words;
}

/// "fast drying", of the cautions that fewer zones have than before, though some still do.
std::string fewer_titles(const std::vector<Caution>& before, const std::vector<Caution>& after) {
  std::vector<Caution> fewer;
  const auto count = [](const std::vector<Caution>& fears, const Caution& caution) {
    return std::count_if(fears.begin(), fears.end(), [&caution](const Caution& one) {
      return one.title == caution.title && one.level == caution.level;
    });
  };
  for (const Caution& caution : before) {
    const auto left = count(after, caution);
    if (left > 0 && left < count(before, caution)) fewer.push_back(caution);
  }
  return titles(fewer, CautionLevel::caution);
}

/// What is gained by the best choice over the job as ordered.
std::string gain_words(const ChoiceFigures& ordered, const ChoiceFigures& best,
                       const CompareRules& rules) {
  std::string words;
  if (ordered.stops > 0) {
    const std::string gone = titles(ordered.fears, CautionLevel::stop, best.fears);
    words = fmt::format("As ordered the plan says stop: {}.",
                        titles(ordered.fears, CautionLevel::stop));
    if (best.stops == 0) words += " This way no stop is left.";
    if (best.stops > 0 && !gone.empty()) words += fmt::format(" This way without {}.", gone);
  }
  if (is_late(ordered, rules) && late_words(ordered) != late_words(best)) {
    words += fmt::format("{}As ordered {}; this way {}.", words.empty() ? "" : " ",
                         late_words(ordered), late_words(best));
  }
  if (ordered.dark_min - best.dark_min >= told_dark_min) {
    words += fmt::format("{}As ordered {} of the finishing is in the dark; this way {}.",
                         words.empty() ? "" : " ", duration_words(ordered.dark_min),
                         best.dark_min < told_less_min ? "none" : duration_words(best.dark_min));
  }
  const std::string gone = titles(ordered.fears, CautionLevel::caution, best.fears);
  if (!gone.empty()) words += fmt::format("{}Takes away: {}.", words.empty() ? "" : " ", gone);
  const std::string fewer = fewer_titles(ordered.fears, best.fears);
  if (words.empty() && !fewer.empty()) words = fmt::format("Fewer zones with {}.", fewer);
  return words.empty() ? "Less trouble for the same day." : words;
}

std::string why_words(const Comparison& comparison, const CompareRules& rules) {
  const ComparedChoice& ordered = comparison.choices.front();
  const ComparedChoice& best = comparison.choices[comparison.best];
  if (comparison.not_that_day()) {
    return fmt::format("Nothing that was tried takes away the stop: {}.{}",
                       titles(best.figures.fears, CautionLevel::stop),
                       comparison.best == 0
                           ? std::string()
                           : fmt::format(" The least bad: {}.", best.choice.words));
  }
  const std::string instead = instead_words(comparison, rules);
  if (comparison.best != 0) return gain_words(ordered.figures, best.figures, rules) + instead;
  return fmt::format("No stop, and {}{}.{}", late_words(ordered.figures),
                     is_late(ordered.figures, rules)
                         ? "; nothing that was tried is worth more than its trouble"
                         : "; a change is more trouble than it saves",
                     instead);
}

/// Work before sunrise on the job's day; empty if it starts by daylight.
std::string lights_words(const Job& job) {
  if (!starts_in_the_dark(job)) return {};
  const SunTimes sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  return fmt::format("lights until the sun is up at {}", clock_of(job).time(sun.rise));
}

/// "$120 more than as ordered", "$80 less than as ordered", "as much as as ordered".
std::string money_against(double more, const std::string& currency) {
  constexpr double told_from = 0.5;
  if (std::abs(more) < told_from) return "as much as what is ordered";
  return fmt::format("{} {} than as ordered", money_words(std::abs(more), currency),
                     more > 0.0 ? "more" : "less");
}

/// ", not counting ice (no price given)", of what is needed beyond the job as ordered.
std::string unpriced_words(const PourCost& best, const PourCost& ordered) {
  std::string words;
  for (const CostPart part : best.left_out) {
    const auto& known = ordered.left_out;
    if (std::find(known.begin(), known.end(), part) != known.end()) continue;
    words += (words.empty() ? "" : " and ") + std::string(cost_part_words(part));
  }
  return words.empty() ? words : fmt::format(", not counting {} (no price given)", words);
}

/// " It costs $120 more than as ordered on the likely day, on average $80 less than as ordered.";
/// empty without prices.
std::string money_sentence(const Comparison& comparison) {
  const ComparedChoice& ordered = comparison.choices.front();
  const ComparedChoice& best = comparison.choices[comparison.best];
  if (!best.money || !ordered.money || !best.choice.job.prices) return {};
  const std::string& currency = best.choice.job.prices->currency;
  const auto mean = best.money->expected();
  const auto ordered_mean = ordered.money->expected();
  if (comparison.best == 0) {
    return fmt::format(
        " The pour costs {}{}{}.", money_words(ordered.money->likely(), currency),
        mean ? fmt::format(", on average {}", money_words(*mean, currency)) : std::string(),
        unpriced_words(*ordered.money, {}));
  }
  std::string words =
      fmt::format(" On the likely day it costs {}",
                  money_against(best.money->likely() - ordered.money->likely(), currency));
  if (mean && ordered_mean) {
    words += fmt::format(", on average {}", money_against(*mean - *ordered_mean, currency));
  }
  return words + unpriced_words(*best.money, *ordered.money) + ".";
}

std::string cost_words(const Comparison& comparison) {
  const ComparedChoice& best = comparison.choices[comparison.best];
  if (comparison.not_that_day()) return "A call to the plant and to the crew.";
  const std::string lights = lights_words(best.choice.job);
  std::string words = comparison.best == 0 ? std::string() : best.cost.words;
  if (!lights.empty()) words += (words.empty() ? "" : "; ") + lights;
  if (!words.empty()) return capital(words) + ".";
  return comparison.best == 0 ? "Nothing." : "Nothing but the change itself.";
}

/// "a high of 84 °F (concrete 75 °F)".
std::string day_words(const TurningPoint& turning, double shift_k, UnitSystem units) {
  return fmt::format("a high of {} (concrete {})",
                     temperature_words(turning.high_c + shift_k, units),
                     temperature_words(turning.concrete_c + shift_k, units));
}

/// The answer holds between the nearest turning points on both sides of the day as it is.
std::string range_words(const TurningPoint& turning, UnitSystem units) {
  std::optional<double> from_k;
  std::optional<double> to_k;
  for (const double shift_k : turning.by_shift_k.turns) {
    if (shift_k <= 0.0) from_k = shift_k;
    if (shift_k > 0.0 && !to_k) to_k = shift_k;
  }
  std::string words = "It holds";
  if (from_k) words += " above " + day_words(turning, *from_k, units);
  if (to_k) {
    words += fmt::format("{} below {}", from_k ? " and" : "", day_words(turning, *to_k, units));
  }
  return words + "; beyond that compare again.";
}

std::string turning_words(const Job& job, const Comparison& comparison, const TurningPoint& turning,
                          const CompareRules& rules) {
  if (comparison.not_that_day()) return "Another forecast: compare again with it.";
  const Crossing& crossing = turning.by_shift_k;
  if (crossing.never()) {
    return fmt::format("The answer is the same on days up to {} warmer or cooler.",
                       temperature_difference_words(rules.search_k, job.units));
  }
  if (!crossing.once()) return range_words(turning, job.units);
  const std::string day = day_words(turning, crossing.turns.front(), job.units);
  const char* side = crossing.at_most ? "above" : "below";
  const char* other = crossing.at_most ? "below" : "above";
  if (comparison.best != 0) {
    return comparison.choices.front().figures.stops > 0
               ? fmt::format("{} {} do it, {} compare again.", capital(side), day, other)
               : fmt::format("{} {} do it, {} leave it.", capital(side), day, other);
  }
  return fmt::format("{} {} it runs late or into a stop: compare again then.", capital(side), day);
}

}  // namespace

Advice advise(const Job& job, const Comparison& comparison, const TurningPoint& turning,
              const CompareRules& rules) {
  const std::string order = comparison.not_that_day()
                                ? "Not that day."
                                : capital(comparison.choices[comparison.best].choice.words) + ".";
  std::string cost = cost_words(comparison);
  if (!comparison.not_that_day()) cost += money_sentence(comparison);
  return {order, why_words(comparison, rules), std::move(cost),
          turning_words(job, comparison, turning, rules)};
}

}  // namespace slabtide
