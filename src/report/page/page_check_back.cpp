#include "page_check_back.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "page_document.h"
#include "report/markup/embedded_pages.h"
#include "report/markup/page_views.h"
#include "report/markup/svg.h"
#include "slabtide/core/version.h"

namespace slabtide {

namespace {

/// Half the chart covers at least this, so that a few minutes do not look like much.
constexpr double min_half_min = 30.0;

/// A bar from the planned time in the middle to the time noted, early to the left, ending in a dot.
class OffBar {
 public:
  explicit OffBar(double half_min) : half_min_(half_min) {}

  std::string render(double late_min) const {
    constexpr double middle = width / 2.0;
    constexpr double thick = 6.0;
    constexpr double dot = 5.0;
    const double end = middle + (middle - dot) * late_min / half_min_;
    const double centre = height / 2.0;
    Element line("line");
    line.set("class", "off-planned").set("x1", middle).set("x2", middle);
    line.set("y1", 0.0).set("y2", height);
    Element bar("rect");
    bar.set("class", "off-bar").set("x", std::min(middle, end)).set("y", centre - thick / 2.0);
    bar.set("width", std::fabs(end - middle)).set("height", thick);
    Element seen("circle");
    seen.set("class", "off-seen").set("cx", end).set("cy", centre).set("r", dot);
    return Element("svg")
        .set("class", "off")
        .set("viewBox", std::string_view(fmt::format("0 0 {} {}", width, height)))
        .set("aria-hidden", "true")
        .add(bar)
        .add(line)
        .add(seen)
        .str();
  }

 private:
  static constexpr double width = 160.0;
  static constexpr double height = 18.0;
  double half_min_;
};

class CheckBackPage {
 public:
  explicit CheckBackPage(const CheckBackFacts& facts) : facts_(facts), job_(facts.plan.job) {}

  View view() const {
    View view = opening_view(job_);
    view.put("summary", summary_words(summary_of(facts_)))
        .put("half", fmt::format("{:.0f}", half_min()))
        .put("version", version());
    put_section(view, "events", event_views());
    put_section(view, "measurements", measurement_views());
    put_section(view, "others", other_views());
    return view;
  }

 private:
  static void put_section(View& view, const std::string& name, std::vector<View> rows) {
    if (rows.empty()) return;
    view.put(name, View().put("rows", std::move(rows)));
  }

  double half_min() const {
    return std::max(min_half_min, std::ceil(summary_of(facts_).farthest_min));
  }

  View row(std::size_t index) const {
    const Observation& reading = facts_.reading(facts_.checked[index]);
    View view;
    view.put("what", observation_place_words(reading))
        .put("seen", time_view(pointer("/readings", index, "at"), reading.at, job_));
    return view;
  }

  /// "7 min late", "54 min early", "on time".
  static std::string late_or_early_words(double late_min) {
    const long minutes = std::lround(late_min);
    if (minutes == 0) return "on time";
    return fmt::format("{} min {}", std::abs(minutes), minutes > 0 ? "late" : "early");
  }

  std::vector<View> event_views() const {
    const OffBar bar(half_min());
    std::vector<View> rows;
    for (std::size_t i = 0; i < facts_.checked.size(); ++i) {
      const CheckedObservation& one = facts_.checked[i];
      const auto late_min = one.late_min(facts_.journal);
      if (!late_min) continue;
      rows.push_back(
          row(i)
              .put("planned", time_view(pointer("/readings", i, "planned"), one.planned, job_))
              .put("late", figure_view(pointer("/readings", i, "late_min"), std::round(*late_min),
                                       late_or_early_words(*late_min)))
              .put("bar", bar.render(*late_min)));
    }
    return rows;
  }

  std::vector<View> measurement_views() const {
    std::vector<View> rows;
    for (std::size_t i = 0; i < facts_.checked.size(); ++i) {
      const CheckedObservation& one = facts_.checked[i];
      if (!one.planned_value) continue;
      const Observation& reading = facts_.reading(one);
      const auto figure = [&](std::string_view prefix, double value) {
        const std::string key =
            fmt::format("{}_{}", prefix, measure_unit(observation_measure(reading.kind)));
        return figure_view(pointer("/readings", i, key), value,
                           measured_words(reading, value, job_.units));
      };
      rows.push_back(row(i)
                         .put("read", figure("read", *reading.value))
                         .put("planned", figure("planned", *one.planned_value)));
    }
    return rows;
  }

  /// Observations that the plan says nothing about: cracks, and times past the end of the weather
  /// data.
  std::vector<View> other_views() const {
    std::vector<View> rows;
    for (std::size_t i = 0; i < facts_.checked.size(); ++i) {
      const CheckedObservation& one = facts_.checked[i];
      if (!one.planned && !one.planned_value) rows.push_back(row(i));
    }
    return rows;
  }

  const CheckBackFacts& facts_;
  const Job& job_;
};

}  // namespace

std::string page_check_back(const CheckBackFacts& facts) {
  return plain_page(facts.plan.job, embedded::page_check_back_html(), CheckBackPage(facts).view());
}

}  // namespace slabtide
