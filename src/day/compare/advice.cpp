#include "slabtide/day/compare/advice.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/day/crew/crew_remedies.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/weather/sky/sun.h"

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

std::string stops_words(int stops) {
  return fmt::format("{} stop{}", stops, stops == 1 ? "" : "s");
}

/// "misses nothing", "is 35 min late in all, 50 min on average and 1 h 20 min on a bad day".
std::string late_words(const ChoiceFigures& figures) {
  const bool late = figures.minutes_late > 0.5;
  std::string forecast =
      late ? fmt::format("is {} late in all", duration_words(figures.minutes_late))
           : "misses nothing";
  if (figures.bad_day_late_min <= figures.minutes_late + 0.5) return forecast;
  const std::string bad_day = duration_words(figures.bad_day_late_min);
  if (figures.bad_day_late_min <= figures.minutes_late + told_min) {
    return late ? fmt::format("{}, or {} on a bad day", forecast, bad_day)
                : fmt::format("{} on the likely day, {} late on a bad one", forecast, bad_day);
  }
  return fmt::format("{} on the day as forecast, {} on average and {} on a bad day", forecast,
                     late
                         ? duration_words(figures.expected_late_min)
                         : fmt::format("but is {} late", duration_words(figures.expected_late_min)),
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

/// What speaks against a choice that runs less late than the best on the day as forecast.
std::string against_words(const ComparedChoice& other, const ComparedChoice& best,
                          const CompareRules& rules) {
  const auto steps = [&rules](double minutes) { return std::floor(minutes / rules.worth_min); };
  const ChoiceFigures& it = other.figures;
  if (it.stops > best.figures.stops) return fmt::format("runs into {}", stops_words(it.stops));
  if (steps(it.expected_late_min) > steps(best.figures.expected_late_min)) {
    return fmt::format("is {} late on average", duration_words(it.expected_late_min));
  }
  if (steps(it.bad_day_late_min) > steps(best.figures.bad_day_late_min)) {
    return fmt::format("is {} late on a bad day", duration_words(it.bad_day_late_min));
  }
  return fmt::format("saves less than {:.0f} min for more trouble", rules.worth_min);
}

/// The choice that is least late on the day as forecast, if that is less than the best is, and what
/// speaks against it; empty if there is none.
std::string instead_words(const Comparison& comparison, const CompareRules& rules) {
  const ComparedChoice& best = comparison.choices[comparison.best];
  const auto least = std::min_element(comparison.choices.begin(), comparison.choices.end(),
                                      [](const ComparedChoice& a, const ComparedChoice& b) {
                                        return a.figures.minutes_late < b.figures.minutes_late;
                                      });
  constexpr double told_less_min = 0.5;
  if (least->figures.minutes_late > best.figures.minutes_late - told_less_min) return {};
  return fmt::format(" {} is less late on the day as forecast ({}), but {}.",
                     capital(least->choice.label), duration_words(least->figures.minutes_late),
                     against_words(*least, best, rules));
}

std::string why_words(const Comparison& comparison, const CompareRules& rules) {
  const ComparedChoice& ordered = comparison.choices.front();
  const ComparedChoice& best = comparison.choices[comparison.best];
  const std::string instead = instead_words(comparison, rules);
  if (comparison.best != 0) {
    return fmt::format("As ordered {}; so {}.{}", state_words(ordered), state_words(best), instead);
  }
  return fmt::format("{}, {}.{}", capital(state_words(ordered)),
                     is_clean(ordered.figures, rules) ? "and a change would be trouble for nothing"
                                                      : "and nothing that was tried does better",
                     instead);
}

/// Work before sunrise on the job's day; empty if it starts by daylight.
std::string lights_words(const Job& job) {
  const SunTimes sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  if (sun.kind != SunTimes::Kind::ordinary || job.pour.start >= sun.rise) return {};
  return fmt::format("lights until the sun is up at {}", clock_of(job).time(sun.rise));
}

std::string finish_change(const ChoiceFigures& from, const ChoiceFigures& to, const Job& job) {
  if (!from.last_finish || !to.last_finish) return {};
  const double minutes = seconds_between(*from.last_finish, *to.last_finish) / seconds_per_minute;
  if (std::abs(minutes) < told_min) return {};
  return fmt::format("the last work is done at {}, {} {}", clock_of(job).time(*to.last_finish),
                     duration_words(minutes), minutes > 0.0 ? "later" : "sooner");
}

std::string hours_change(const ChoiceFigures& from, const ChoiceFigures& to) {
  const double hours = to.crew_hours - from.crew_hours;
  if (std::abs(hours) < told_h) return {};
  return fmt::format("{:.1f} crew hours {}", std::abs(hours), hours > 0.0 ? "more" : "fewer");
}

std::string cost_words(const Job& job, const Comparison& comparison) {
  const std::string lights = lights_words(comparison.choices[comparison.best].choice.job);
  if (comparison.best == 0) return lights.empty() ? "Nothing." : capital(lights) + ".";
  const ComparedChoice& ordered = comparison.choices.front();
  const ComparedChoice& best = comparison.choices[comparison.best];
  std::string words;
  for (const std::string& part : {best.cost.words, hours_change(ordered.figures, best.figures),
                                  finish_change(ordered.figures, best.figures, job), lights}) {
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
  return {capital(comparison.choices[comparison.best].choice.words) + ".",
          why_words(comparison, rules), cost_words(job, comparison),
          turning_words(job, comparison, turning, rules)};
}

}  // namespace slabtide
