#include "page_lanes.h"

#include <fmt/format.h>

#include "core/text.h"
#include "report/markup/page_views.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

constexpr double all = 100.0;
constexpr double band_height = 14.0;
constexpr double band_inset = 2.5;
constexpr double baseline = 14.0;  ///< of words, from the top of the lane
constexpr double word_gap = 5.0;
/// A band that starts before this percentage of the width has all its words behind it; one that
/// ends after the second has them all in front (ours: the longest words need this much on a phone's
/// 720 px).
constexpr double room_before = 17.0;
constexpr double room_behind = 84.0;
/// The width of a letter there, in percent (ours).
constexpr double letter_percent = 1.1;

std::string percent_length(double percent) { return short_number(percent, 2) + "%"; }

constexpr double clock_height = 17.0;
constexpr double clock_baseline = 13.0;

/// Draws the element with this name over the whole drawing.
Element everywhere(std::string_view name) {
  return Element("use").set("href", name).set("width", "100%").set("height", "100%");
}

/// A nested drawing that stretches only along the time axis: 0 to 100 across.
Element stretched(double from, double to, double top, double height) {
  Element inner("svg");
  inner.set("x", percent_length(from))
      .set("y", top)
      .set("width", percent_length(to - from))
      .set("height", height)
      .set("viewBox", fmt::format("0 0 100 {}", short_number(height)))
      .set("preserveAspectRatio", "none");
  return inner;
}

/// The outline of a band that rises and falls, 0 to 100 across it.
std::string outline(double grown, double falls) {
  PathData path;
  path.move_to(0.0, band_height);
  if (grown <= falls) {
    path.line_to(grown, 0.0).line_to(falls, 0.0);
  } else {
    // It starts to fall before it has fully risen: the peak is where rise and fall meet.
    const double rise = 1.0 / grown;
    const double fall = 1.0 / (all - falls);
    const double x = (1.0 + falls * fall) / (rise + fall);
    path.line_to(x, band_height * x * rise < band_height ? band_height * (1.0 - x * rise) : 0.0);
  }
  return path.line_to(all, band_height).close().str();
}

Element time_words(const PointedTime& time, const std::string& shown, const Job& job) {
  Element words("tspan");
  words.set("data-json", time.json)
      .set("data-time", iso8601_minute(time.at, job.site.time_zone))
      .text(shown);
  return words;
}

void add_hours(Element& words, const Band& shown, const Job& job) {
  if (!shown.until) {
    words.add(time_words(shown.from, day_clock(shown.from.at, job), job)).text(" on");
    return;
  }
  const ShownSpan span =
      clock_of(job).ends_seen_from(job.pour.date, shown.from.at, shown.until->at);
  words.add(time_words(shown.from, span.from, job)).text("–");
  words.add(time_words(*shown.until, span.to, job));
}

Element words_at(double percent, double top, std::string_view anchor) {
  Element words("text");
  const bool before = anchor == "end";
  words.set("x", percent_length(percent))
      .set("y", top + baseline)
      .set("dx", before ? -word_gap : word_gap);
  if (before) words.set("text-anchor", anchor);
  return words;
}

void add_words(Element& group, const Band& shown, double from, double to, double top,
               const Job& job) {
  if (from < room_before) {
    Element behind = words_at(to, top, "start");
    behind.text(shown.name + " ");
    add_hours(behind, shown, job);
    group.add(behind);
    return;
  }
  Element before = words_at(from, top, "end");
  before.text(shown.name);
  Element behind = words_at(to, top, "start");
  if (to > room_behind) {
    before.text(" ");
    add_hours(before, shown, job);
  } else {
    add_hours(behind, shown, job);
    group.add(behind);
  }
  group.add(before);
}

}  // namespace

Element lane_definitions(const DayAxis& axis, const PlannedPour& facts) {
  Element hours("symbol");
  hours.set("id", "day-hours");
  for (const Night& night : nights(axis, facts)) {
    hours.add(Element("rect")
                  .set("class", "night")
                  .set("x", axis.fraction(night.from))
                  .set("width", percent_length(axis.percent(night.to) - axis.percent(night.from)))
                  .set("height", "100%"));
  }
  Element names("symbol");
  names.set("id", "day-clock");
  for (const HourMark& mark : hour_marks(axis, facts.job)) {
    const std::string at = axis.fraction(mark.at);
    hours.add(Element("line").set("class", "hour").set("x1", at).set("x2", at).set("y2", "100%"));
    constexpr double room_percent = 97.0;  // a label beyond this would be cut off
    if (axis.percent(mark.at) > room_percent) continue;
    names.add(Element("text")
                  .set("class", "hour-words")
                  .set("x", at)
                  .set("dx", 2.0)
                  .set("y", clock_baseline)
                  .text(mark.words));
  }
  return Element("svg").set("class", "spoken").set("aria-hidden", "true").add(hours).add(names);
}

Element clock_drawing() {
  Element drawing = lane_drawing(clock_height, {});
  return drawing.add(everywhere("#day-clock"));
}

Element lane_drawing(double height, const std::string& label) {
  Element drawing("svg");
  drawing.set("class", "lanes").set("height", height);
  if (label.empty()) {
    drawing.set("aria-hidden", "true");
  } else {
    drawing.set("role", "img").set("aria-label", label);
  }
  return drawing.add(everywhere("#day-hours"));
}

Element band(const Band& shown, const DayAxis& axis, double top, const Job& job) {
  const UtcTime until = shown.until ? shown.until->at : axis.to;
  const UtcTime gone = std::max(shown.gone.value_or(until), until);
  const double from = axis.percent(shown.from.at);
  const double to = axis.percent(gone);
  const double across = std::max(to - from, 0.01);
  const auto within = [&](UtcTime time) {
    return std::clamp(all * (axis.percent(time) - from) / across, 0.0, all);
  };
  Element shape = stretched(from, from + across, top + band_inset, band_height);
  shape.add(Element("path")
                .set("class", fmt::format("band {}{}", shown.style, shown.main ? " main" : ""))
                .set("d", outline(within(shown.all_over.value_or(shown.from.at)), within(until))));
  Element group("g");
  group.set("class", shown.main ? "name-main" : "name").add(shape);
  add_words(group, shown, from, to, top, job);
  return group;
}

Element block(const std::string& style, UtcTime from, UtcTime to, const std::string& words,
              const DayAxis& axis, double top) {
  const double left = axis.percent(from);
  const double across = axis.percent(to) - left;
  Element group("g");
  group.add(Element("rect")
                .set("class", "block " + style)
                .set("x", percent_length(left))
                .set("y", top + band_inset)
                .set("width", percent_length(across))
                .set("height", band_height));
  if (static_cast<double>(display_width(words)) * letter_percent > across) return group;
  constexpr double inset = 3.0;
  return group.add(Element("text")
                       .set("class", "in-block")
                       .set("x", percent_length(left))
                       .set("dx", inset)
                       .set("y", top + baseline)
                       .text(words));
}

Element sun_strip(const std::vector<SharePoint>& points, const DayAxis& axis, double top,
                  double height) {
  Element strip = stretched(0.0, all, top, height);
  if (points.size() < 2) return strip;
  const double first = axis.percent(points.front().at);
  const double last = axis.percent(points.back().at);
  strip.add(Element("rect")
                .set("class", "shade")
                .set("x", first)
                .set("width", last - first)
                .set("height", height));
  PathData path;
  path.move_to(first, height);
  for (const SharePoint& point : points) {
    path.line_to(axis.percent(point.at), height * (1.0 - point.fraction));
  }
  path.line_to(last, height).close();
  return strip.add(Element("path").set("class", "sun").set("d", path.str()));
}

}  // namespace slabtide
