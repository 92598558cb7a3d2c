#include "slabtide/day/compare/advice.h"

#include <cmath>
#include <cstdlib>
#include <optional>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

/// Smaller differences in crew hours and finishing times are not mentioned (ours).
constexpr double told_h = 0.5;
constexpr double told_min = 10.0;

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

/// "35 min", "1 h 20 min".
std::string span_words(double minutes) {
  const long whole = std::lround(std::abs(minutes));
  const long hours = whole / minutes_per_hour;
  const long rest = whole % minutes_per_hour;
  if (hours == 0) return fmt::format("{} min", rest);
  return rest == 0 ? fmt::format("{} h", hours) : fmt::format("{} h {} min", hours, rest);
}

std::string stops_words(int stops) {
  return fmt::format("{} stop{}", stops, stops == 1 ? "" : "s");
}

/// "misses nothing", "is 35 min late in all, 50 min on average and 1 h 20 min on a bad day".
std::string late_words(const ChoiceFigures& figures) {
  const bool late = figures.minutes_late > 0.5;
  std::string forecast =
      late ? fmt::format("is {} late in all", span_words(figures.minutes_late)) : "misses nothing";
  if (figures.bad_day_late_min <= figures.minutes_late + 0.5) return forecast;
  const std::string bad_day = span_words(figures.bad_day_late_min);
  if (figures.bad_day_late_min <= figures.minutes_late + told_min) {
    return late ? fmt::format("{}, or {} on a bad day", forecast, bad_day)
                : fmt::format("{} on the likely day, {} late on a bad one", forecast, bad_day);
  }
  return fmt::format("{} on the day as forecast, {} on average and {} on a bad day", forecast,
                     late ? span_words(figures.expected_late_min)
                          : fmt::format("but is {} late", span_words(figures.expected_late_min)),
                     bad_day);
}

/// "the crew of 4 is 35 min late in all and 2 stops stand in the way".
std::string state_words(const ComparedChoice& compared) {
  const ChoiceFigures& figures = compared.figures;
  std::string words =
      fmt::format("the crew of {} {}", compared.choice.job.crew.finishers, late_words(figures));
  if (figures.stops > 0) {
    words += fmt::format(" and {} {} in the way", stops_words(figures.stops),
                         figures.stops == 1 ? "stands" : "stand");
  }
  return words;
}

bool is_clean(const ChoiceFigures& figures, const CompareRules& rules) {
  return figures.stops == 0 && figures.expected_late_min <= rules.worth_min;
}

std::string order_words(const Comparison& comparison, const CompareRules& rules) {
  const ComparedChoice& ordered = comparison.choices.front();
  const ComparedChoice& best = comparison.choices[comparison.best];
  if (comparison.best != 0) {
    return fmt::format("{}. As ordered {}; so {}.", capital(best.choice.words),
                       state_words(ordered), state_words(best));
  }
  return fmt::format("{}. {}, {}.", capital(best.choice.words), capital(state_words(ordered)),
                     is_clean(ordered.figures, rules) ? "and a change would be trouble for nothing"
                                                      : "and nothing that was tried does better");
}

std::string finish_change(const ChoiceFigures& from, const ChoiceFigures& to, const Job& job) {
  if (!from.last_finish || !to.last_finish) return {};
  const double minutes = seconds_between(*from.last_finish, *to.last_finish) / seconds_per_minute;
  if (std::abs(minutes) < told_min) return {};
  return fmt::format("the last work is done at {}, {} {}", clock_of(job).time(*to.last_finish),
                     span_words(minutes), minutes > 0.0 ? "later" : "sooner");
}

std::string hours_change(const ChoiceFigures& from, const ChoiceFigures& to) {
  const double hours = to.crew_hours - from.crew_hours;
  if (std::abs(hours) < told_h) return {};
  return fmt::format("{:.1f} crew hours {}", std::abs(hours), hours > 0.0 ? "more" : "fewer");
}

std::string cost_words(const Job& job, const Comparison& comparison) {
  if (comparison.best == 0) return "Nothing.";
  const ComparedChoice& ordered = comparison.choices.front();
  const ComparedChoice& best = comparison.choices[comparison.best];
  std::string words;
  for (const std::string& part : {best.cost.words, hours_change(ordered.figures, best.figures),
                                  finish_change(ordered.figures, best.figures, job)}) {
    if (!part.empty()) words += (words.empty() ? "" : "; ") + part;
  }
  return words.empty() ? "Nothing but the change itself." : capital(words) + ".";
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
    return fmt::format("{} {} do it, {} leave it.", capital(side), day, other);
  }
  return fmt::format("{} {} it runs late or into a stop: compare again then.", capital(side), day);
}

}  // namespace

Advice advise(const Job& job, const Comparison& comparison, const TurningPoint& turning,
              const CompareRules& rules) {
  return {order_words(comparison, rules), cost_words(job, comparison),
          turning_words(job, comparison, turning, rules)};
}

}  // namespace slabtide
