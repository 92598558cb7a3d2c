#include "page_days.h"

#include <fmt/format.h>

#include "job/model/wording.h"
#include "page_cautions.h"
#include "page_document.h"
#include "page_headline.h"
#include "report/markup/embedded_pages.h"
#include "report/markup/page_views.h"
#include "report/words/made_words.h"
#include "report/words/verdict_sign.h"
#include "slabtide/core/units.h"
#include "slabtide/core/version.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/report/words/days_facts.h"

namespace slabtide {

namespace {

View share_view(const std::string& json, double fraction) {
  return figure_view(json, fraction, percent_words(fraction));
}

std::vector<View> detail_views(const std::vector<DayDetail>& lines) {
  std::vector<View> views;
  for (const DayDetail& line : lines) {
    views.push_back(View().put("label", line.label).put("text", line.text));
  }
  return views;
}

std::vector<View> day_caution_views(const ForecastDay& day, const std::string& json,
                                    const Job& job) {
  std::vector<View> views;
  for (std::size_t i = 0; i < day.cautions.size(); ++i) {
    const Caution& caution = day.cautions[i];
    View view = time_view_from(day.date, pointer(json + "cautions", i, "at"), caution.at, job);
    put_caution(view, caution, caution.text, job);
    view.put("same", View().put("text_json", pointer(json + "cautions", i, "text")));
    views.push_back(std::move(view));
  }
  return views;
}

View day_view(const ForecastDay& day, std::size_t index, const PlannedDays& facts) {
  const Job& job = facts.job;
  const std::string json = pointer("/days", index) + "/";
  const auto clocked = [&](const char* key, const std::optional<UtcTime>& at) {
    return time_view_from(day.date, json + key, at, job);
  };
  View view;
  view.put("day", shown_day(day.date, clock_style(job)))
      .put("id", fmt::format("day-{}", index + 1))
      .flag("best", index == facts.days.best)
      .put("verdict", verdict_view(day.judged))
      .put("short", verdict_in_short(day.judged.verdict))
      .put("start", clocked("start", day.start))
      .put("crew", figure_view(json + "finishers", day.finishers, fmt::format("{}", day.finishers)))
      .flag("late", day.late_min > 0.0)
      .put("rain", share_view(json + "rain_before_set/chance", day.rain_before_set.chance))
      .put("call_off", clocked("call_off_by", day.call_off_by))
      .put("high", figure_view(json + "high_c", day.weather.high_c,
                               temperature_words(day.weather.high_c, job.units)))
      .put("low", figure_view(json + "low_c", day.weather.low_c,
                              temperature_words(day.weather.low_c, job.units)))
      .put("lines", detail_views(day_details(day, facts)));
  if (!day.cautions.empty()) {
    view.put("watch", View().put("cautions", day_caution_views(day, json, job)));
  }
  if (day.frost.at) {
    view.put("frost", clocked("frost/at", day.frost.at));
  } else if (day.frost_fraction.value_or(0.0) > 0.0) {
    view.put("frost_days", share_view(json + "frost/share", *day.frost_fraction));
  }
  if (const auto& lost = day.finish_lost_fraction) {
    view.put("lost", share_view(json + "finish_lost_share", *lost));
  }
  return view;
}

std::vector<View> left_out_day_views(const PlannedDays& facts) {
  std::vector<View> views;
  for (const LeftOutDay& day : facts.days.left_out) {
    views.push_back(
        View().put("day", shown_day(day.date, clock_style(facts.job))).put("why", day.why));
  }
  return views;
}

std::vector<View> assumed_views(const PlannedDays& facts) {
  std::vector<View> views;
  for (const std::string& one : days_assumptions(facts)) {
    views.push_back(
        View().put("text", one).put("text_json", pointer("/assumptions", views.size())));
  }
  return views;
}

View view_of(const PlannedDays& facts) {
  std::vector<View> days;
  for (std::size_t i = 0; i < facts.days.days.size(); ++i) {
    days.push_back(day_view(facts.days.days[i], i, facts));
  }
  View view;
  view.put("title", page_title(facts.job))
      .put("span", days_span_words(facts))
      .put("made", made_words(facts))
      .put("advice", days_advice_words(facts))
      .put("chosen", day_view(facts.days.chosen(), facts.days.best, facts))
      .put("days", std::move(days))
      .put("left_out", left_out_day_views(facts))
      .put("assumptions", assumed_views(facts))
      .put("version", version());
  return view;
}

}  // namespace

std::string page_days(const PlannedDays& facts) {
  return plain_page(facts.job, embedded::page_days_html(), view_of(facts));
}

}  // namespace slabtide
