#include "slabtide/report/words/days_facts.h"

#include <cmath>
#include <variant>

#include <fmt/format.h>

#include "call_off_words.h"
#include "cell_words.h"
#include "cost_words.h"
#include "day/pour/pour_span.h"
#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

/// Less than this much rain is no figure: a wet road (ours).
constexpr double told_rain_mm = 0.05;
constexpr double told_chance = 0.005;

std::string day_words(Date date, const Job& job) { return shown_day(date, clock_style(job)); }

std::string finishers_words(int count) {
  return fmt::format("{} finisher{}", count, count == 1 ? "" : "s");
}

std::string rain_amount_words(double mm, UnitSystem units) {
  constexpr double mm_per_m = 1000.0;
  return units == UnitSystem::us ? fmt::format("{:.2f} in", in_from_m(mm / mm_per_m))
                                 : fmt::format("{:.1f} mm", mm);
}

/// "6:00-7:00 AM, 9:00 AM": the hours whose starts have this verdict.
std::string starts_of(const ForecastDay& day, Verdict verdict, const Clock& clock) {
  std::string words;
  const std::vector<TriedStart>& starts = day.starts;
  for (std::size_t first = 0; first < starts.size(); ++first) {
    if (starts[first].verdict != verdict) continue;
    std::size_t last = first;
    while (last + 1 < starts.size() && starts[last + 1].verdict == verdict) ++last;
    words += fmt::format("{}{}", words.empty() ? "" : ", ",
                         first == last
                             ? clock.time_seen_from(day.date, starts[first].at)
                             : clock.span_seen_from(day.date, starts[first].at, starts[last].at));
    first = last;
  }
  return words;
}

std::string crew_words(const ForecastDay& day, const Job& job) {
  const int own = job.crew.finishers;
  if (day.late_min > 0.0) {
    return fmt::format("{} run {} late in all, and no crew you could call in does better",
                       finishers_words(day.finishers), duration_words(day.late_min));
  }
  if (day.finishers > own) {
    return fmt::format("{} do it in time, {} more than the job's {}",
                       finishers_words(day.finishers), day.finishers - own, own);
  }
  const bool fewer_do = day.smallest_crew && *day.smallest_crew < own;
  return fmt::format("{} do it in time{}", finishers_words(own),
                     fewer_do ? fmt::format("; {} would do", *day.smallest_crew) : std::string());
}

std::string rain_stages_words(const ForecastDay& day, const Job& job) {
  const std::string before = rain_risk_words(day.rain_before_set, job.units);
  const std::string after = rain_risk_words(day.rain_after_set, job.units);
  return fmt::format("{} before it has set all over at {}{}; {} after that{}", before,
                     clock_of(job).time_seen_from(day.date, day.set),
                     before == "none" ? "" : " (rain then ruins the slab)", after,
                     after == "none" ? "" : " (no harm)");
}

std::string frost_line_words(const ForecastDay& day, const Job& job) {
  if (day.frost.at) {
    return fmt::format("the surface freezes about {}, before it is strong enough",
                       clock_of(job).time_seen_from(day.date, *day.frost.at));
  }
  if (const double fraction = day.frost_fraction.value_or(0.0); fraction >= told_chance) {
    return fmt::format("on {} of {} possible days the surface freezes while it is young",
                       percent_words(fraction), day.days_drawn);
  }
  return fmt::format("none while it is young: its surface stays at {} or more",
                     temperature_words(day.frost.min_surface_c, job.units));
}

}  // namespace

std::string days_span_words(const PlannedDays& facts) {
  const std::vector<ForecastDay>& days = facts.days.days;
  std::string last = shown_date(days.back().date, clock_style(facts.job));
  if (days.size() == 1) return last;
  return fmt::format("{} to {}", day_words(days.front().date, facts.job), last);
}

std::string days_advice_words(const PlannedDays& facts) {
  const ForecastDay& day = facts.days.chosen();
  const std::string when = fmt::format("{}, first concrete {}", day_words(day.date, facts.job),
                                       clock_of(facts.job).time_seen_from(day.date, day.start));
  return day.judged.verdict == Verdict::think_again
             ? fmt::format("No day of this forecast is fit to pour; the least bad is {}.", when)
             : fmt::format("Pour on {}.", when);
}

std::string rain_risk_words(const RainRisk& rain, UnitSystem units) {
  std::string words;
  if (rain.chance >= told_chance) words = percent_words(rain.chance);
  if (rain.amount_mm >= told_rain_mm) {
    words +=
        fmt::format("{}{}", words.empty() ? "" : ", ", rain_amount_words(rain.amount_mm, units));
  }
  return words.empty() ? "none" : words;
}

DayDetail starts_detail(const ForecastDay& day, const Job& job) {
  std::string text;
  for (const Verdict verdict : {Verdict::good, Verdict::care, Verdict::think_again}) {
    const std::string spans = starts_of(day, verdict, clock_of(job));
    if (spans.empty()) continue;
    const std::string_view words =
        verdict == Verdict::care ? std::string_view("with care") : verdict_in_short(verdict);
    text += fmt::format("{}{} {}", text.empty() ? "" : "; ", words, spans);
  }
  return {"Starts", text};
}

std::vector<DayDetail> day_details(const ForecastDay& day, const PlannedDays& facts) {
  const Job& job = facts.job;
  std::vector<DayDetail> lines{starts_detail(day, job),
                               {"Crew", crew_words(day, job)},
                               {"Rain", rain_stages_words(day, job)},
                               {"Frost", frost_line_words(day, job)}};
  if (day.finish_lost_fraction) {
    lines.push_back(
        {"How sure", fmt::format("the finish is lost on {} of {} possible "
                                 "days",
                                 percent_words(*day.finish_lost_fraction), day.days_drawn)});
  }
  if (day.cost && job.prices) {
    lines.push_back({"Cost", cost_sentence(*day.cost, job.prices->currency)});
  }
  lines.push_back(
      {"Call off", call_off_words(day.first_batched, day.date, job, facts.practice.days)});
  return lines;
}

std::vector<std::string> days_assumptions(const PlannedDays& facts) {
  const Job& job = facts.job;
  std::vector<std::string> said;
  if (job.mix.temperature_is_assumed) {
    said.push_back(fmt::format("concrete at {}, as nobody told it: ask the plant",
                               assumed_concrete_words(job.units)));
  } else if (const auto* concrete_c = std::get_if<double>(&job.mix.temperature)) {
    said.push_back(fmt::format("concrete at {} on every day, as the job says",
                               temperature_words(*concrete_c, job.units)));
  }
  if (job.site.ground_c) {
    said.push_back(fmt::format("ground at {} on every day, as the job says",
                               temperature_words(*job.site.ground_c, job.units)));
  }
  if (const std::string cells = larger_cells_words(job); !cells.empty()) said.push_back(cells);
  said.emplace_back("plants take changes up to that long before they batch: ask yours");
  said.emplace_back("a forecast is less sure the further ahead: look again the day before");
  return said;
}

}  // namespace slabtide
