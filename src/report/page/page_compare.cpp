#include "page_compare.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "page_document.h"
#include "page_headline.h"
#include "report/markup/embedded_pages.h"
#include "report/markup/page_views.h"
#include "report/words/cell_words.h"
#include "report/words/cost_words.h"
#include "report/words/made_words.h"
#include "slabtide/core/version.h"

namespace slabtide {

namespace {

View count_view(const std::string& json, int count) {
  return figure_view(json, count, fmt::format("{}", count));
}

void put_windows(View& row, const std::string& json, const ChoiceFigures& figures, const Job& job) {
  row.put("first", time_view(json + "first_window", figures.first_window, job))
      .put("last", time_view(json + "last_window", figures.last_window, job))
      .put("done", time_view(json + "last_finish", figures.last_finish, job))
      .put("saw", time_view(json + "latest_saw", figures.latest_saw, job))
      .flag("done_dark", figures.daylight_left_min && *figures.daylight_left_min < 0.0)
      .flag("saw_dark", figures.saw_at_night);
}

void put_crew(View& row, const std::string& json, const ChoiceFigures& figures) {
  const auto minutes = [&json](const char* key, double value) {
    const double whole = std::round(value);
    return figure_view(json + key, whole, fmt::format("{:.0f} min", whole));
  };
  row.put("late", minutes("minutes_late", figures.minutes_late))
      .put("expected", minutes("expected_late_min", figures.expected_late_min))
      .put("bad_day", minutes("bad_day_late_min", figures.bad_day_late_min))
      .put("hours", figure_view(json + "crew_h", figures.crew_hours,
                                fmt::format("{:.0f} h", figures.crew_hours)));
  if (figures.smallest_crew) {
    row.put("crew", count_view(json + "smallest_crew", *figures.smallest_crew));
  } else {
    row.flag("crew", false);
  }
}

void put_cost(View& row, const std::string& json, const ComparedChoice& compared) {
  if (!compared.money || !compared.choice.job.prices) return;
  const auto money = [&](const char* key, double value) {
    return figure_view(json + "cost/" + key, value,
                       money_words(value, compared.choice.job.prices->currency));
  };
  View cost;
  cost.flag("more", !compared.money->left_out.empty());
  cost.put("likely", money("likely", compared.money->likely()));
  if (const auto mean = compared.money->expected()) cost.put("mean", money("expected", *mean));
  row.put("money", std::move(cost));  // not "cost": the advice has one, whether priced or not
}

View row_view(const ComparedChoice& compared, std::size_t index, const CompareFacts& facts) {
  const Job& job = facts.plan.job;
  const ChoiceFigures& figures = compared.figures;
  const std::string json = pointer("/choices", index) + "/";
  const auto risk = worst_loss(figures.fears);
  View row;
  row.put("verdict", verdict_view(figures.judgement))
      .put("short", verdict_in_short(figures.judgement.verdict))
      .put("choice", compared.choice.label)
      .put("choice_json", json + "choice")
      .flag("best", index == facts.comparison.best && !facts.comparison.not_that_day())
      .put("drying",
           figure_view(json + "peak_evaporation_kg_m2_h", figures.peak_evaporation_kg_m2_h,
                       evaporation_words(figures.peak_evaporation_kg_m2_h, job.units)))
      .put("sheens", count_view(json + "early_sheens", figures.early_sheens))
      .put("crusts", count_view(json + "crusts", figures.crusts))
      .put("risk", risk ? std::string(loss_id(*risk)) : std::string("–"))
      .put("stops", count_view(json + "stops", figures.stops))
      .put("cautions", count_view(json + "cautions", figures.cautions));
  put_windows(row, json, figures, job);
  put_crew(row, json, figures);
  put_cost(row, json, compared);
  return row;
}

std::vector<View> left_out_views(const CompareFacts& facts) {
  std::vector<View> views;
  for (const LeftOutChoice& one : facts.comparison.left_out) {
    views.push_back(View().put("choice", one.label).put("why", one.why));
  }
  return views;
}

/// The choices in the order of reading: the best, the job as ordered, then the better the sooner.
std::vector<std::size_t> reading_order(const CompareFacts& facts) {
  const std::vector<ComparedChoice>& choices = facts.comparison.choices;
  std::vector<std::size_t> order(choices.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto place = [&facts](std::size_t choice) {
    return choice == facts.comparison.best ? 0 : choice == 0 ? 1 : 2;
  };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (place(a) != place(b)) return place(a) < place(b);
    return better(choices[a], choices[b], facts.plan.practice.compare);
  });
  return order;
}

View view_of(const CompareFacts& facts) {
  std::vector<View> rows;
  for (const std::size_t i : reading_order(facts)) {
    rows.push_back(row_view(facts.comparison.choices[i], i, facts));
  }
  View view = opening_view(facts.plan.job);
  view.put("order", facts.advice.order)
      .put("why", facts.advice.why)
      .put("cost", facts.advice.cost)
      .put("turning", facts.advice.turning)
      .put("rows", std::move(rows))
      .put("left_out", left_out_views(facts))
      .flag("priced", facts.plan.job.prices.has_value())
      .put("costless", left_out_sentence(parts_left_out(facts.comparison)))
      .put("weather", weather_words(facts.plan))
      .put("mix", mix_words(facts.plan))
      .put("made", made_words(facts.plan))
      .put("version", version());
  if (const std::string cells = larger_cells_words(facts.plan.job); !cells.empty())
    view.put("larger_cells", cells);
  if (facts.comparison.days_sampled > 0) {
    view.put("days_drawn",
             count_view("/days_drawn", static_cast<int>(facts.comparison.days_sampled)));
  }
  return view;
}

}  // namespace

std::string page_compare(const CompareFacts& facts) {
  return plain_page(facts.plan.job, embedded::page_compare_html(), view_of(facts));
}

}  // namespace slabtide
