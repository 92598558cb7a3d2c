#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/field/check_back.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Everything that a report of a finished pour shows. The references must outlive the call.
struct CheckBackFacts {
  const PlannedPour& plan;
  const Journal& journal;
  /// Every observation of the journal with what the plan says about it, in order of time.
  const std::vector<CheckedObservation>& checked;

  const Observation& reading(const CheckedObservation& checked_one) const {
    return journal.readings[checked_one.reading];
  }
};

/// How far the noted events were from their planned times, in minutes.
struct CheckSummary {
  int events = 0;
  double mean_late_min = 0.0;
  double farthest_min = 0.0;  ///< early or late
};
CheckSummary summary_of(const CheckBackFacts& facts);

/// "3 events: on average 12 min later than planned, the farthest 20 min off."
std::string summary_words(const CheckSummary& summary);

/// "walk, east strip: thumbprint of 1/4 in".
std::string observation_place_words(const Observation& reading);

/// The unit of a measurement in JSON: "c", "m_s", "share"; empty if it has none.
std::string_view measure_unit(ObservationMeasure measure);

/// A measurement in the units of the job: "64 °F", "40 %".
std::string measured_words(const Observation& reading, double value, UnitSystem units);

}  // namespace slabtide
