#include "slabtide/report/text/text_compare.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "text_parts.h"

namespace slabtide {

namespace {

constexpr std::size_t label_width = 24;

std::string clock_or_dash(const std::optional<UtcTime>& time, const Job& job) {
  return time ? clock_of(job).time(*time) : std::string("-");
}

std::string windows_words(const ChoiceFigures& figures, const Job& job) {
  return clock_or_dash(figures.first_window, job) + "-" + clock_or_dash(figures.last_window, job);
}

std::string evaporation_figure(double kg_m2_h, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.2f}", lb_ft2_h_from_kg_m2_h(kg_m2_h))
                                 : fmt::format("{:.1f}", kg_m2_h);
}

/// "13:40", with a mark if the sun has set.
std::string finish_words(const ChoiceFigures& figures, const Job& job) {
  const bool dark = figures.daylight_left_min && *figures.daylight_left_min < 0.0;
  return clock_or_dash(figures.last_finish, job) + (dark ? "n" : " ");
}

std::string row(const ComparedChoice& compared, bool best, const Job& job) {
  const ChoiceFigures& figures = compared.figures;
  return fmt::format(
      "{} {}{:>12}{:>5.0f}{:>5}{:>4.0f}{:>5}{:>4}{:>7}{:>7}{:>5}\n", best ? "*" : " ",
      pad(compared.choice.label, label_width), windows_words(figures, job),
      std::round(figures.minutes_late),
      figures.smallest_crew ? fmt::format("{}", *figures.smallest_crew) : std::string("-"),
      figures.crew_hours, evaporation_figure(figures.peak_evaporation_kg_m2_h, job.units),
      fmt::format("{}/{}", figures.early_sheens, figures.crusts), finish_words(figures, job),
      clock_or_dash(figures.latest_saw, job) + (figures.saw_at_night ? "n" : " "),
      fmt::format("{}/{}", figures.stops, figures.cautions));
}

std::string table(const CompareFacts& facts, const TextStyle& style) {
  const Job& job = facts.plan.job;
  std::string text =
      fmt::format("  {}{:>12}{:>5}{:>5}{:>4}{:>5}{:>4}{:>7}{:>7}{:>5}\n", pad("", label_width),
                  "windows", "late", "crew", "h", "dry", "top", "done ", "saw by", "stop");
  for (std::size_t i = 0; i < facts.comparison.choices.size(); ++i) {
    const bool best = i == facts.comparison.best;
    const std::string line = row(facts.comparison.choices[i], best, job);
    text += best ? style.heading(line) : line;
  }
  return text;
}

/// The choices that do best over the sampled days, and the job as ordered.
std::string days_table(const CompareFacts& facts, const TextStyle& style) {
  if (facts.comparison.days_sampled == 0) return {};
  constexpr std::size_t max_shown = 6;
  const std::vector<ComparedChoice>& choices = facts.comparison.choices;
  std::vector<std::size_t> order(choices.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin() + 1, order.end(), [&](std::size_t a, std::size_t b) {
    return better(choices[a], choices[b], facts.plan.practice.compare);
  });
  if (order.size() > max_shown) order.resize(max_shown);
  std::string text = fmt::format("  {}{:>11}{:>12}{:>10}\n", pad("minutes late", label_width),
                                 "as forecast", "on average", "bad day");
  for (const std::size_t i : order) {
    const ChoiceFigures& figures = choices[i].figures;
    const bool best = i == facts.comparison.best;
    const std::string line =
        fmt::format("{} {}{:>11.0f}{:>12.0f}{:>10.0f}\n", best ? "*" : " ",
                    pad(choices[i].choice.label, label_width), std::round(figures.minutes_late),
                    std::round(figures.expected_late_min), std::round(figures.bad_day_late_min));
    text += best ? style.heading(line) : line;
  }
  return text +
         paragraph(
             fmt::format("On average over {} days that may come, drawn from what the forecast "
                         "and the mix may be off; nine in ten of them are no later than the "
                         "bad day. The job as ordered and the best few.",
                         facts.comparison.days_sampled),
             2, 2) +
         "\n";
}

std::string legend(const Job& job) {
  const bool us = job.units == UnitSystem::us;
  return paragraph(
      fmt::format(
          "windows: the first main one opens, the last closes. late: minutes in all. crew: the "
          "fewest that miss nothing. h: crew hours. dry: highest evaporation, {}. top: zones that "
          "look dry too soon / crust. done: the last finishing. saw by: the first zone. n: in the "
          "night. stop: stops / cautions. Admixtures in {}; joined with another change, retarder "
          "goes into the last half.",
          us ? "lb/ft²/h" : "kg/m²/h", us ? "fl oz/cwt" : "mL/100 kg"),
      2, 2);
}

std::string left_out(const Comparison& comparison) {
  if (comparison.left_out.empty()) return {};
  std::string text = "Left out: ";
  for (std::size_t i = 0; i < comparison.left_out.size(); ++i) {
    const LeftOutChoice& one = comparison.left_out[i];
    text += fmt::format("{}{} ({})", i == 0 ? "" : "; ", one.label, one.why);
  }
  return paragraph(text + ".", 2, 2);
}

std::string advice_block(const CompareFacts& facts, const TextStyle& style) {
  constexpr std::size_t hang = 2;
  return style.heading("What to order") + "\n" + paragraph(facts.advice.order, hang, hang) +
         paragraph("It takes: " + facts.advice.cost, hang, hang) +
         paragraph("What would change it: " + facts.advice.turning, hang, hang);
}

}  // namespace

std::string text_compare(const CompareFacts& facts, const TextStyle& style) {
  return style.finished(text_opening(facts.plan, style) + "\n" + table(facts, style) + "\n" +
                        legend(facts.plan.job) + left_out(facts.comparison) + "\n" +
                        days_table(facts, style) + advice_block(facts, style) + "\n" +
                        text_assumptions(facts.plan, style));
}

}  // namespace slabtide
