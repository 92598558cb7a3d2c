#include "page_cautions.h"

#include <array>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/words/made_words.h"
#include "report/words/told_cautions.h"
#include "slabtide/core/units.h"
#include "slabtide/core/version.h"

namespace slabtide {

namespace {

std::string_view level_words(CautionLevel level) {
  constexpr std::array<std::string_view, 3> words{"Note", "Caution", "Stop"};
  return words[static_cast<std::size_t>(level)];
}

/// Each of the cautions that are told as one, in its own words.
std::vector<View> place_views(const ToldCaution& told, const std::vector<Caution>& cautions,
                              const Job& job) {
  std::vector<View> views;
  for (const std::size_t index : told.indexes) {
    View view = time_view(pointer("/cautions", index, "at"), cautions[index].at, job);
    views.push_back(view.put("place", cautions[index].zone)
                        .put("place_json", pointer("/cautions", index, "text"))
                        .put("says", cautions[index].text));
  }
  return views;
}

View caution_view(const ToldCaution& told, const std::vector<Caution>& cautions, const Job& job) {
  const Caution& caution = *told.first;
  const std::size_t index = told.indexes.front();
  View view = time_view(pointer("/cautions", index, "at"), caution.at, job);
  put_caution(view, caution, told.text, job);
  if (told.merged()) {
    View each;
    each.put("count", fmt::format("{}", told.indexes.size()));
    view.put("each", each.put("places", place_views(told, cautions, job)));
  } else {
    view.put("same", View().put("text_json", pointer("/cautions", index, "text")));
  }
  return view;
}

std::vector<View> assumption_views(const std::vector<std::string>& assumptions) {
  std::vector<View> views;
  for (std::size_t i = 0; i < assumptions.size(); ++i) {
    views.push_back(
        View().put("text_json", pointer("/assumptions", i)).put("text", assumptions[i]));
  }
  return views;
}

std::vector<View> note_views(const std::vector<std::string>& notes) {
  std::vector<View> views;
  for (const std::string& note : notes) views.push_back(View().put("text", note));
  return views;
}

/// The stiffness range in which each operation of the job is done.
std::vector<View> threshold_views(const PlannedPour& facts) {
  std::array<bool, operation_count> used{};
  for (const ShownPart& part : all_parts(facts)) {
    for (const Operation one : operations_of(part.finish)) {
      used[static_cast<std::size_t>(one)] = true;
    }
  }
  std::vector<View> views;
  for (std::size_t i = 0; i < operation_count; ++i) {
    if (!used[i]) continue;
    const ResistanceWindow& window = facts.practice.windows[i];
    views.push_back(View()
                        .put("operation", operation_words(static_cast<Operation>(i)))
                        .put("opens_psi", fmt::format("{:g}", window.opens_psi))
                        .put("closes_psi", fmt::format("{:g}", window.closes_psi)));
  }
  return views;
}

View weather_view(const PlannedPour& facts) {
  const WeatherSummary day = summarise_weather(facts.run);
  const UnitSystem units = facts.job.units;
  const auto temperature = [units](const char* json, double c) {
    return figure_view(json, c, temperature_words(c, units));
  };
  View view;
  view.put("source", facts.forecast.source)
      .put("high", temperature("/weather/high_c", day.high_c))
      .put("low", temperature("/weather/low_c", day.low_c))
      .put("wind", figure_view("/weather/mean_wind_10m_m_s", day.mean_wind_10m_m_s,
                               wind_words(day.mean_wind_10m_m_s, units)))
      .put("cloud", figure_view("/weather/daylight_cloud_share", day.daylight_cloud_fraction,
                                percent_words(day.daylight_cloud_fraction)));
  if (facts.forecast.issued) {
    View issued;
    issued.put("at", time_view("/weather/issued", facts.forecast.issued, facts.job));
    view.put("issued", std::move(issued));
  }
  if (facts.forecast_age_h) {
    view.put("age", figure_view("/weather/age_h", *facts.forecast_age_h,
                                fmt::format("{:.0f} h", *facts.forecast_age_h)));
  }
  return view;
}

/// Sunrise and sunset; none if the sun does not rise or set.
std::vector<View> sun_views(const PlannedPour& facts) {
  const SunTimes& sun = facts.plan.sun;
  if (sun.kind != SunTimes::Kind::ordinary) return {};
  View view;
  view.put("rise", time_view("/weather/sunrise", sun.rise, facts.job))
      .put("set", time_view("/weather/sunset", sun.set, facts.job));
  return {view};
}

}  // namespace

void put_caution(View& view, const Caution& caution, std::string_view text, const Job& job) {
  const std::string_view remedy = remedy_of(text);
  view.put("level", caution_level_id(caution.level))
      .put("level_words", level_words(caution.level))
      .put("head",
           with_names(Element("span"), text.substr(0, text.size() - remedy.size()), job).str())
      .put("remedy", with_names(Element("span").set("class", "remedy"), remedy, job).str())
      .put("source", caution.source);
  if (caution.zone.empty()) return;
  view.put("about", View().put("zone", named_place(caution.zone, job).str()));
}

View cautions_view(const PlannedPour& facts) {
  std::vector<View> cautions;
  std::vector<View> others;
  for (const ToldCaution& told : told_cautions(facts.plan.cautions, facts.job, max_told_places)) {
    (told.at_once ? cautions : others)
        .push_back(caution_view(told, facts.plan.cautions, facts.job));
  }
  View view;
  if (!cautions.empty()) view.put("first", View().put("cautions", std::move(cautions)));
  if (others.empty()) return view;
  View rest;
  rest.put("count", fmt::format("{}", others.size()));
  rest.put("cautions", std::move(others));
  return view.put("rest", std::move(rest));
}

View sources_view(const PlannedPour& facts) {
  View view;
  return view.put("assumptions", assumption_views(facts.plan.assumptions))
      .put("forecast_notes", note_views(facts.forecast.notes))
      .put("thresholds", threshold_views(facts))
      .put("weather", weather_view(facts))
      .put("sun", sun_views(facts))
      .put("mix",
           mix_words(facts) + "; " + set_words(facts.run.mixes.front().setting, facts.job.units))
      .put("surface_fall",
           temperature_difference_words(facts.practice.saw.surface_fall_k, facts.job.units))
      .put("made", made_words(facts))
      .put("version", version());
}

}  // namespace slabtide
