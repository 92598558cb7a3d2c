#include "slabtide/report/text/text_check_back.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "core/text.h"
#include "job/model/wording.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

// Columns: what and where, noted, planned, minutes, and the scale.
constexpr std::size_t what_width = 27;
constexpr std::size_t clock_width = 13;  // "Fri 12:00 AM"
constexpr std::size_t minutes_width = 5;
constexpr int scale_half = 10;  ///< characters on either side of the middle
/// A character of the scale is at least this many minutes, or more so that every event fits.
constexpr double min_sign_min = 3.0;

/// "     |  *     ": early to the left, late to the right of the bar.
std::string mark(double late_min, double sign_min) {
  std::string scale(2 * scale_half + 1, ' ');
  scale[scale_half] = '|';
  const long place = std::lround(late_min / sign_min);
  scale[static_cast<std::size_t>(scale_half + std::clamp<long>(place, -scale_half, scale_half))] =
      '*';
  return scale.substr(0, scale.find_last_not_of(' ') + 1);
}

class CheckText {
 public:
  CheckText(const CheckBackFacts& facts, const TextStyle& style)
      : facts_(facts), job_(facts.plan.job), style_(style) {}

  std::string text() const {
    return fmt::format(
        "{}\n{}{}{}",
        style_.both_ends(style_.heading(job_.name), shown_date(job_.pour.date, clock_style(job_))),
        events(), measurements(), unforeseen());
  }

 private:
  /// Whether there is room for the scale.
  bool wide() const { return style_.width >= text_width; }

  double sign_min() const {
    double max = min_sign_min * scale_half;
    for (const CheckedObservation& one : facts_.checked) {
      max = std::max(max, std::abs(one.late_min(facts_.journal).value_or(0.0)));
    }
    return max / scale_half;
  }

  std::string line(const Observation& seen, const std::string& noted, const std::string& planned,
                   const std::string& rest) const {
    // A label without room for it stands in a line of its own, and nothing of it is cut.
    std::string label = observation_place_words(seen);
    std::string above;
    if (display_width(label) > what_width) {
      above = style_.paragraph(std::exchange(label, {}), 0, 4);
    }
    return above + fmt::format("{} {}{}{}\n", pad(label, what_width),
                               pad(noted, std::max(clock_width, noted.size() + 1)),
                               pad(planned, std::max(clock_width, planned.size() + 1)), rest);
  }

  std::string events() const {
    std::string rows;
    for (const CheckedObservation& one : facts_.checked) {
      const auto minutes = one.late_min(facts_.journal);
      if (!minutes) continue;
      rows += line(facts_.reading(one), day_clock(facts_.reading(one).at, job_),
                   day_clock(one.planned, job_),
                   fmt::format("{:>+{}d} {}", std::lround(*minutes), minutes_width - 1,
                               wide() ? mark(*minutes, sign_min()) : std::string()));
    }
    if (rows.empty()) return {};
    return fmt::format("{} {}{}{}\n{}\n{}", pad("", what_width), pad("seen", clock_width),
                       pad("planned", clock_width), wide() ? "min   early  |  late" : "min late",
                       rows, style_.paragraph(summary_words(summary_of(facts_))));
  }

  std::string measurements() const {
    std::string rows;
    for (const CheckedObservation& one : facts_.checked) {
      if (!one.planned_value) continue;
      const Observation& seen = facts_.reading(one);
      rows += line(seen, measured_words(seen, *seen.value, job_.units),
                   measured_words(seen, *one.planned_value, job_.units),
                   "at " + day_clock(seen.at, job_));
    }
    if (rows.empty()) return {};
    return fmt::format("\n{} {}planned\n{}", pad("", what_width), pad("read", clock_width), rows);
  }

  /// Observations that the plan says nothing about: cracks, and times past the end of the weather
  /// data.
  std::string unforeseen() const {
    std::string rows;
    for (const CheckedObservation& one : facts_.checked) {
      if (one.planned || one.planned_value) continue;
      rows += line(facts_.reading(one), day_clock(facts_.reading(one).at, job_), "", "-");
    }
    return rows.empty() ? rows : fmt::format("\n{}", rows);
  }

  const CheckBackFacts& facts_;
  const Job& job_;
  const TextStyle& style_;
};

}  // namespace

std::string text_check_back(const CheckBackFacts& facts, const TextStyle& style) {
  return style.finished(CheckText(facts, style).text());
}

}  // namespace slabtide
