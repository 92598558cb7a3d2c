#include "slabtide/report/text/text_compare.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/cell_words.h"
#include "report/words/cost_words.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "text_parts.h"
#include "text_table.h"

namespace slabtide {

namespace {

constexpr std::size_t legend_lead = 2;
/// Behind a time at which it is dark.
constexpr std::string_view night_mark = " n";

std::string clock_or_dash(const std::optional<UtcTime>& time, const Job& job) {
  return time ? clock_of(job).time(*time) : std::string("-");
}

std::string windows_words(const ChoiceFigures& figures, const Job& job) {
  if (!figures.first_window || !figures.last_window)
    return clock_or_dash(figures.first_window, job);
  return clock_of(job).span_seen_from(job.pour.date, *figures.first_window, *figures.last_window);
}

std::string evaporation_figure(double kg_m2_h, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.2f}", lb_ft2_h_from_kg_m2_h(kg_m2_h))
                                 : fmt::format("{:.1f}", kg_m2_h);
}

/// A time, marked where it is dark.
std::string with_night(const std::optional<UtcTime>& time, bool dark, const Job& job) {
  return fmt::format("{}{}", clock_or_dash(time, job), dark ? night_mark : std::string_view());
}

std::string start_words(const ComparedChoice& compared, const CompareFacts& facts) {
  const SunTimes& sun = facts.plan.plan.sun;
  const UtcTime start = compared.choice.job.pour.start;
  const bool dark = sun.kind == SunTimes::Kind::ordinary && start < sun.rise;
  return with_night(start, dark, facts.plan.job);
}

/// What the worst stop or caution is about: "slab", "finish".
std::string risk_words(const ChoiceFigures& figures) {
  const auto loss = worst_loss(figures.fears);
  return loss ? std::string(loss_id(*loss)) : "-";
}

/// No row is marked where every choice runs into a stop.
bool is_marked(const Comparison& comparison, std::size_t choice) {
  return choice == comparison.best && !comparison.not_that_day();
}

/// What the choice costs, on the likely day or on average, with "+" where a part has no price; "-"
/// where it is not known.
std::string money_cell(const ComparedChoice& compared, bool on_average) {
  if (!compared.money || !compared.choice.job.prices) return "-";
  const auto money =
      on_average ? compared.money->expected() : std::optional(compared.money->likely());
  if (!money) return "-";
  return money_words(*money, compared.choice.job.prices->currency) +
         (compared.money->left_out.empty() ? "" : "+");
}

std::vector<std::string> row(const ComparedChoice& compared, bool best, const CompareFacts& facts) {
  const Job& job = facts.plan.job;
  const ChoiceFigures& figures = compared.figures;
  const bool dark = figures.daylight_left_min && *figures.daylight_left_min < 0.0;
  std::vector<std::string> cells{
      (best ? "* " : "  ") + compared.choice.label,
      start_words(compared, facts),
      windows_words(figures, job),
      fmt::format("{:.0f}", std::round(figures.minutes_late)),
      figures.smallest_crew ? fmt::format("{}", *figures.smallest_crew) : std::string("-"),
      fmt::format("{:.0f}", figures.crew_hours),
      evaporation_figure(figures.peak_evaporation_kg_m2_h, job.units),
      with_night(figures.last_finish, dark, job),
      with_night(figures.latest_saw, figures.saw_at_night, job),
      fmt::format("{}/{}", figures.stops, figures.cautions),
      risk_words(figures)};
  if (job.prices) cells.push_back(money_cell(compared, false));
  return cells;
}

/// Whether any choice starts, is finished or must be sawn in the dark.
bool has_night(const std::vector<std::vector<std::string>>& rows) {
  return std::any_of(rows.begin(), rows.end(), [](const std::vector<std::string>& cells) {
    return std::any_of(cells.begin() + 1, cells.end(),
                       [](const std::string& cell) { return cell.ends_with(night_mark); });
  });
}

/// The choices, and what the columns that are shown stand for.
std::string table(const CompareFacts& facts, const TextStyle& style) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < facts.comparison.choices.size(); ++i) {
    rows.push_back(row(facts.comparison.choices[i], is_marked(facts.comparison, i), facts));
  }
  std::vector<TextColumn> columns{
      {"", false, 0},
      {"start", false, 3},
      {"windows", false, 6, "first main window to the last"},
      {"late", true, 0, "minutes in all"},
      {"crew", true, 1, "the fewest that miss nothing"},
      {"h", true, 4, "crew hours"},
      {"dry", true, 5,
       fmt::format("the highest evaporation, {}",
                   facts.plan.job.units == UnitSystem::us ? "lb/ft²/h" : "kg/m²/h")},
      {"done", false, 0, "when finishing ends"},
      {"saw by", false, 2, "the first zone's first cut"},
      {"stop", true, 0, "stops / cautions"},
      {"risk", false, 0, "the worst loss they warn of"}};
  if (facts.plan.job.prices) columns.push_back({"cost", true, 0});
  const FittedTable table = fitted_table(std::move(columns), std::move(rows), style.width);
  const std::string best = facts.comparison.not_that_day() ? "" : "*: what to order. ";
  return table.text + "\n" +
         style.paragraph(
             best + table.legend + (has_night(table.rows) ? " n: in the dark, bring lights." : ""),
             legend_lead, legend_lead);
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
  std::vector<std::vector<std::string>> rows;
  for (const std::size_t i : order) {
    const ChoiceFigures& figures = choices[i].figures;
    rows.push_back({(is_marked(facts.comparison, i) ? "* " : "  ") + choices[i].choice.label,
                    fmt::format("{:.0f}", std::round(figures.minutes_late)),
                    fmt::format("{:.0f}", std::round(figures.expected_late_min)),
                    fmt::format("{:.0f}", std::round(figures.bad_day_late_min))});
    if (facts.plan.job.prices) rows.back().push_back(money_cell(choices[i], true));
  }
  std::vector<TextColumn> columns{{"  minutes late", false, 0},
                                  {"as forecast", true, 0},
                                  {"on average", true, 0},
                                  {"bad day", true, 0}};
  if (facts.plan.job.prices) columns.push_back({"avg cost", true, 0});
  const std::string text = text_table(std::move(columns), std::move(rows), style.width);
  return text +
         style.paragraph(
             fmt::format(
                 "On average over {} possible days, drawn from how far off "
                 "the forecast and the mix may be; nine in ten of them are no later than the "
                 "bad day. The job as ordered and the best few, in order: stops first, then "
                 "minutes late (by steps of {:.0f}), trouble and cautions left, weighed together.",
                 facts.comparison.days_sampled, facts.plan.practice.compare.worth_min),
             2, 2) +
         "\n";
}

/// What the cost counts, and what it leaves out; empty without prices.
std::string cost_legend(const CompareFacts& facts, const TextStyle& style) {
  if (!facts.plan.job.prices) return {};
  std::string words =
      "cost: the whole pour on the likely day, as far as the job gives prices; it decides only "
      "between choices that are alike in all else. +: and more, for a part without a price.";
  if (facts.comparison.days_sampled > 0) {
    words += " Avg cost: with finishes redone as often as they are lost over those days.";
  }
  return style.paragraph(words + left_out_sentence(parts_left_out(facts.comparison)), 2, 2);
}

std::string left_out(const Comparison& comparison, const TextStyle& style) {
  if (comparison.left_out.empty()) return {};
  std::string text = "Left out: ";
  for (std::size_t i = 0; i < comparison.left_out.size(); ++i) {
    const LeftOutChoice& one = comparison.left_out[i];
    text += fmt::format("{}{} ({})", i == 0 ? "" : "; ", one.label, one.why);
  }
  return style.paragraph(text + ".", 2, 2);
}

std::string advice_block(const CompareFacts& facts, const TextStyle& style) {
  constexpr std::size_t lead = 2;
  constexpr std::size_t hang = 9;
  return style.heading("What to order") + "\n" + style.entry("Do", facts.advice.order, lead, hang) +
         style.entry("Why", facts.advice.why, lead, hang) +
         style.entry("Takes", facts.advice.cost, lead, hang) +
         style.paragraph("What would change it: " + facts.advice.turning, lead, lead);
}

std::string larger_cells(const Job& job, const TextStyle& style) {
  const std::string words = larger_cells_words(job);
  return words.empty() ? words : style.paragraph(words, 2, 4);
}

}  // namespace

std::string text_compare(const CompareFacts& facts, const TextStyle& style) {
  return style.finished(text_opening(facts.plan, style) + "\n" + table(facts, style) +
                        cost_legend(facts, style) + left_out(facts.comparison, style) + "\n" +
                        days_table(facts, style) + advice_block(facts, style) + "\n" +
                        text_assumptions(facts.plan, style) + larger_cells(facts.plan.job, style));
}

}  // namespace slabtide
