#include "page_views.h"

#include <cmath>

#include <fmt/format.h>

#include "embedded_pages.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

constexpr std::string_view no_break_space = "\u00a0";

/// Replaces spaces by non-breaking ones, so that a time or quantity stays on one line.
std::string unbroken(std::string_view words) {
  std::string whole;
  for (const char c : words) {
    if (c == ' ') {
      whole += no_break_space;
    } else {
      whole += c;
    }
  }
  return whole;
}

View known_time_view(const PointedTime& time, std::string_view words, const Job& job) {
  View known;
  known.put("json", time.json)
      .put("iso", iso8601_minute(time.at, job.site.time_zone))
      .put("words", unbroken(words));
  return View().put("time", std::move(known));
}

}  // namespace

std::string pointer(std::string_view base, std::size_t index, std::string_view key) {
  return key.empty() ? fmt::format("{}/{}", base, index)
                     : fmt::format("{}/{}/{}", base, index, key);
}

std::string page_title(const Job& job) { return job.name.empty() ? job.site.name : job.name; }

View time_view(std::string_view json, const std::optional<UtcTime>& time, const Job& job) {
  return time_view_from(job.pour.date, json, time, job);
}

View time_view_from(Date home, std::string_view json, const std::optional<UtcTime>& time,
                    const Job& job) {
  if (!time) return View().flag("time", false);
  return known_time_view({*time, std::string(json)}, clock_of(job).time_seen_from(home, *time),
                         job);
}

SpanViews span_views(const PointedTime& from, const PointedTime& to, const Job& job) {
  const ShownSpan shown = clock_of(job).ends_seen_from(job.pour.date, from.at, to.at);
  return {known_time_view(from, shown.from, job), known_time_view(to, shown.to, job)};
}

View figure_view(std::string_view json, double value, std::string_view words) {
  constexpr double hundred = 100.0;
  const double rounded = std::round(value * hundred) / hundred;
  return exact_figure_view(json, rounded == 0.0 ? 0.0 : rounded, words);
}

View exact_figure_view(std::string_view json, double value, std::string_view words) {
  View view;
  return view.put("json", json)
      .put("value", fmt::format("{}", value))
      .put("words", unbroken(words));
}

std::vector<View> band_views(const std::string& json, const std::optional<TimeBand>& band,
                             const Job& job) {
  if (!band || !band->early) return {};
  View view;
  view.flag("ends", band->late.has_value());
  if (!band->late) return {view.put("early", time_view(json + "/early", band->early, job))};
  SpanViews span = span_views({*band->early, json + "/early"}, {*band->late, json + "/late"}, job);
  return {view.put("early", std::move(span.from)).put("late", std::move(span.to))};
}

std::string page_time(std::string_view json, const std::optional<UtcTime>& time, const Job& job) {
  std::string markup = fill(embedded::page_time_html(), time_view(json, time, job));
  // A file's last line ends; what stands in a sentence does not.
  if (markup.ends_with('\n')) markup.pop_back();
  return markup;
}

std::string page_figure(std::string_view json, double value, std::string_view words) {
  return fill(embedded::page_figure_html(), figure_view(json, value, words));
}

}  // namespace slabtide
