#include "slabtide/report/words/check_back_facts.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "slabtide/job/model/wording.h"

namespace slabtide {

CheckSummary summary_of(const CheckBackFacts& facts) {
  CheckSummary summary;
  double sum_min = 0.0;
  for (const CheckedReading& one : facts.checked) {
    const auto late_min = one.late_min(facts.journal);
    if (!late_min) continue;
    ++summary.events;
    sum_min += *late_min;
    summary.farthest_min = std::max(summary.farthest_min, std::abs(*late_min));
  }
  if (summary.events > 0) summary.mean_late_min = sum_min / summary.events;
  return summary;
}

std::string summary_words(const CheckSummary& summary) {
  const long mean_min = std::lround(summary.mean_late_min);
  return fmt::format("{} event{}: on average {} min {} than planned, the farthest {:.0f} min off.",
                     summary.events, summary.events == 1 ? "" : "s", std::abs(mean_min),
                     mean_min < 0 ? "earlier" : "later", summary.farthest_min);
}

std::string reading_place_words(const FieldReading& reading) {
  std::string words = reading.zone;
  if (!reading.part.empty()) words += fmt::format(", {}", reading.part);
  return fmt::format("{}{}{}", words, words.empty() ? "" : ": ", reading_words(reading.kind));
}

std::string_view measure_unit(ReadingMeasure measure) {
  switch (measure) {
    case ReadingMeasure::nothing:
      return "";
    case ReadingMeasure::temperature:
      return "c";
    case ReadingMeasure::wind:
      return "m_s";
    case ReadingMeasure::humidity:
      return "share";
  }
  return "";
}

std::string measured_words(const FieldReading& reading, double value, UnitSystem units) {
  switch (reading_measure(reading.kind)) {
    case ReadingMeasure::wind:
      return wind_words(value, units);
    case ReadingMeasure::humidity:
      return fmt::format("{:.0f} %", percent_per_one * value);
    default:
      return temperature_words(value, units);
  }
}

}  // namespace slabtide
