#include "slabtide/report/text_check_back.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "slabtide/core/utf8.h"
#include "slabtide/job/wording.h"

namespace slabtide {

namespace {

// Columns: what and where, noted, planned, minutes, and the scale.
constexpr std::size_t what_width = 33;
constexpr std::size_t clock_width = 10;
constexpr std::size_t minutes_width = 5;
constexpr int scale_half = 10;  ///< signs on either side of the middle
/// A sign of the scale is the least of these minutes that takes in every event.
constexpr double least_sign_min = 3.0;

std::string what_words(const FieldReading& reading) {
  std::string words = printable(reading.zone);
  if (!reading.part.empty()) words += fmt::format(", {}", printable(reading.part));
  return fmt::format("{}{}{}", words, words.empty() ? "" : ": ", reading_words(reading.kind));
}

/// "     |  *     ": early to the left, late to the right of the bar.
std::string mark(double late_min, double sign_min) {
  std::string scale(2 * scale_half + 1, ' ');
  scale[scale_half] = '|';
  const long place = std::lround(late_min / sign_min);
  scale[static_cast<std::size_t>(scale_half + std::clamp<long>(place, -scale_half, scale_half))] =
      '*';
  return scale.substr(0, scale.find_last_not_of(' ') + 1);
}

std::string measured_words(const FieldReading& reading, double value, UnitSystem units) {
  switch (reading_measure(reading.kind)) {
    case ReadingMeasure::wind:
      return wind_words(value, units);
    case ReadingMeasure::humidity:
      return fmt::format("{:.0f} %", 100.0 * value);
    default:
      return temperature_words(value, units);
  }
}

class CheckText {
 public:
  CheckText(const PlanFacts& facts, const Journal& journal, std::vector<CheckedReading> checked,
            const TextStyle& style)
      : job_(facts.job), journal_(journal), checked_(std::move(checked)), style_(style) {
    std::stable_sort(checked_.begin(), checked_.end(),
                     [this](const CheckedReading& a, const CheckedReading& b) {
                       return reading(a).at < reading(b).at;
                     });
  }

  std::string text() const {
    return fmt::format("{}\n{}{}{}",
                       both_ends(style_.heading(job_.name), long_date(job_.pour.date)), events(),
                       measurements(), unforeseen());
  }

 private:
  const FieldReading& reading(const CheckedReading& checked) const {
    return journal_.readings[checked.reading];
  }

  double sign_min() const {
    double most = least_sign_min * scale_half;
    for (const CheckedReading& one : checked_) {
      most = std::max(most, std::abs(one.late_min(journal_).value_or(0.0)));
    }
    return most / scale_half;
  }

  std::string line(const FieldReading& seen, const std::string& noted, const std::string& planned,
                   const std::string& rest) const {
    return fmt::format("{} {}{}{}\n", pad(what_words(seen), what_width), pad(noted, clock_width),
                       pad(planned, clock_width), rest);
  }

  std::string events() const {
    std::string rows;
    std::vector<double> late;
    for (const CheckedReading& one : checked_) {
      const auto minutes = one.late_min(journal_);
      if (!minutes) continue;
      late.push_back(*minutes);
      rows += line(
          reading(one), day_clock(reading(one).at, job_), day_clock(one.planned, job_),
          fmt::format("{:>+{}.0f} {}", *minutes, minutes_width - 1, mark(*minutes, sign_min())));
    }
    if (late.empty()) return {};
    return fmt::format("{} {}{}min   early  |  late\n{}\n{}", pad("", what_width),
                       pad("seen", clock_width), pad("planned", clock_width), rows, summary(late));
  }

  std::string summary(const std::vector<double>& late) const {
    double sum = 0.0;
    double off = 0.0;
    for (const double minutes : late) {
      sum += minutes;
      off = std::max(off, std::abs(minutes));
    }
    const auto mean = std::lround(sum / static_cast<double>(late.size()));
    return paragraph(
        fmt::format("{} event{}: on average {} min {} than planned, the farthest {:.0f} "
                    "min off.",
                    late.size(), late.size() == 1 ? "" : "s", std::abs(mean),
                    mean < 0 ? "earlier" : "later", off));
  }

  std::string measurements() const {
    std::string rows;
    for (const CheckedReading& one : checked_) {
      if (!one.planned_value) continue;
      const FieldReading& seen = reading(one);
      rows += line(seen, measured_words(seen, *seen.value, job_.units),
                   measured_words(seen, *one.planned_value, job_.units),
                   "at " + day_clock(seen.at, job_));
    }
    if (rows.empty()) return {};
    return fmt::format("\n{} {}planned\n{}", pad("", what_width), pad("read", clock_width), rows);
  }

  /// Cracks, and what the weather given does not reach.
  std::string unforeseen() const {
    std::string rows;
    for (const CheckedReading& one : checked_) {
      if (one.planned || one.planned_value) continue;
      rows += line(reading(one), day_clock(reading(one).at, job_), "", "-");
    }
    return rows.empty() ? rows : fmt::format("\n{}", rows);
  }

  const Job& job_;
  const Journal& journal_;
  std::vector<CheckedReading> checked_;
  const TextStyle& style_;
};

}  // namespace

std::string text_check_back(const PlanFacts& facts, const Journal& journal,
                            const std::vector<CheckedReading>& checked, const TextStyle& style) {
  return CheckText(facts, journal, checked, style).text();
}

}  // namespace slabtide
