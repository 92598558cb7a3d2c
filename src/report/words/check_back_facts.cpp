#include "slabtide/report/words/check_back_facts.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "slabtide/core/units.h"

namespace slabtide {

CheckSummary summary_of(const CheckBackFacts& facts) {
  CheckSummary summary;
  double sum_min = 0.0;
  for (const CheckedObservation& one : facts.checked) {
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

std::string observation_place_words(const Observation& reading) {
  std::string words = reading.zone;
  if (!reading.part.empty()) words += fmt::format(", {}", reading.part);
  return fmt::format("{}{}{}", words, words.empty() ? "" : ": ", observation_words(reading.kind));
}

std::string_view measure_unit(ObservationMeasure measure) {
  switch (measure) {
    case ObservationMeasure::nothing:
      return "";
    case ObservationMeasure::temperature:
      return "c";
    case ObservationMeasure::wind:
      return "m_s";
    case ObservationMeasure::humidity:
      return "share";
  }
  return "";
}

std::string measured_words(const Observation& reading, double value, UnitSystem units) {
  switch (observation_measure(reading.kind)) {
    case ObservationMeasure::wind:
      return wind_words(value, units);
    case ObservationMeasure::humidity:
      return percent_words(value);
    default:
      return temperature_words(value, units);
  }
}

}  // namespace slabtide
