#include "slabtide/report/text/text_days.h"

#include <map>
#include <utility>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/cost_words.h"
#include "report/words/made_words.h"
#include "report/words/verdict_sign.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/report/words/days_facts.h"
#include "text_parts.h"
#include "text_table.h"

namespace slabtide {

namespace {

constexpr std::size_t days_lead = 2;
constexpr std::size_t days_hang = 15;

std::string days_opening(const PlannedDays& facts, const TextStyle& style) {
  const std::string& name = facts.job.name.empty() ? facts.job.site.name : facts.job.name;
  return style.both_ends(style.heading(name), days_span_words(facts)) +
         style.paragraph(made_words(facts));
}

/// A chance in percent; "yes" where the forecast gives only amounts.
std::string rain_cell(const ForecastDay& day) {
  const RainRisk& rain = day.rain_before_set;
  if (rain.chance == 0.0) return rain.first ? "yes" : "-";
  return percent_words(rain.chance);
}

/// "yes" on the likely day, else on how many of those drawn.
std::string frost_cell(const ForecastDay& day) {
  constexpr double told_fraction = 0.005;
  if (day.frost.at) return "yes";
  const double fraction = day.frost_fraction.value_or(0.0);
  return fraction < told_fraction ? "-" : percent_words(fraction);
}

std::vector<std::string> day_row(const ForecastDay& day, bool best, const Job& job) {
  const Clock clock = clock_of(job);
  const auto clocked = [&](UtcTime at) { return clock.time_seen_from(day.date, at); };
  return {
      (best ? "* " : "  ") + shown_day(day.date, clock_style(job)),
      fmt::format("{} {}", verdict_sign(day.judged.verdict), verdict_in_short(day.judged.verdict)),
      clocked(day.start),
      fmt::format("{}{}", day.finishers, day.late_min > 0.0 ? "!" : ""),
      rain_cell(day),
      frost_cell(day),
      day.finish_lost_fraction ? percent_words(*day.finish_lost_fraction) : std::string("-"),
      clocked(day.call_off_by)};
}

std::string days_table(const PlannedDays& facts, const TextStyle& style) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < facts.days.days.size(); ++i) {
    rows.push_back(day_row(facts.days.days[i], i == facts.days.best, facts.job));
  }
  const FittedTable table =
      fitted_table({{"  day", false, 0},
                    {"verdict", false, 0},
                    {"start", false, 0, "the best hour for the first concrete"},
                    {"crew", true, 0, "the finishers it takes; !: late even so"},
                    {"rain", true, 0, "the chance before it has set"},
                    {"frost", true, 1, "while it is young"},
                    {"lost", true, 2, "days in a hundred on which the finish is"},
                    {"call off by", false, 3}},
                   std::move(rows), style.width);
  return table.text +
         style.paragraph("*: the day to choose. " + table.legend, days_lead, days_lead);
}

std::string chosen_block(const PlannedDays& facts, const TextStyle& style) {
  const ForecastDay& day = facts.days.chosen();
  std::string text =
      style.paragraph(style.heading(days_advice_words(facts))) + verdict_line(day.judged, style);
  for (const DayDetail& line : day_details(day, facts)) {
    text += style.entry(line.label, line.text, days_lead, days_hang);
  }
  return text;
}

std::string day_behind(const ForecastDay& day, const Job& job) {
  const std::string reasons = reasons_words(day.judged);
  const std::string cost =
      day.cost && job.prices ? " " + cost_in_short(*day.cost, job.prices->currency) + "." : "";
  return fmt::format(
      "{}{}. {} to {}. Starts: {}.{}", verdict_words(day.judged.verdict),
      reasons.empty() ? "" : ": " + reasons, temperature_words(day.weather.low_c, job.units),
      temperature_words(day.weather.high_c, job.units), starts_detail(day, job).text, cost);
}

std::string days_behind(const PlannedDays& facts, const TextStyle& style) {
  std::map<Date, std::string> words_of;
  for (const ForecastDay& day : facts.days.days) words_of[day.date] = day_behind(day, facts.job);
  for (const LeftOutDay& day : facts.days.left_out) {
    words_of[day.date] = "Left out: " + day.why + ".";
  }
  std::string text = style.heading("Day by day") + "\n";
  for (const auto& [date, words] : words_of) {
    text += style.entry(shown_day(date, clock_style(facts.job)), words, days_lead, days_hang);
  }
  return text;
}

}  // namespace

std::string text_days(const PlannedDays& facts, const TextStyle& style) {
  std::string assumed = style.heading("Assumed") + "\n";
  for (const std::string& one : days_assumptions(facts)) {
    assumed += style.paragraph(one, days_lead, 2 * days_lead);
  }
  return style.finished(days_opening(facts, style) + "\n" + chosen_block(facts, style) + "\n" +
                        days_table(facts, style) + "\n" + days_behind(facts, style) + "\n" +
                        assumed);
}

}  // namespace slabtide
