#pragma once

#include <string>
#include <vector>

#include "slabtide/day/days/planned_days.h"
#include "slabtide/job/model/job.h"

// The days of a forecast in words, for every report of them.

namespace slabtide {

/// "Thu, May 14 to Wed, May 20, 2026": the days that were planned.
std::string days_span_words(const PlannedDays& facts);

/// Which day to choose: "Pour on Fri, May 15, first concrete 7:00 AM.", or that none is fit, and
/// the least bad.
std::string days_advice_words(const PlannedDays& facts);

/// "40 %, 0.12 in"; "none" where the forecast has neither chance nor amount worth a figure.
std::string rain_risk_words(const RainRisk& rain, UnitSystem units);

/// What is told about a day, and under which label.
struct DayDetail {
  std::string label;
  std::string text;
};

/// "Starts": which hours are good, which want care.
DayDetail starts_detail(const ForecastDay& day, const Job& job);
/// Crew, rain, frost, how sure, what it costs, and until when the plant can be called off.
std::vector<DayDetail> day_details(const ForecastDay& day, const PlannedDays& facts);

/// What is taken to be alike on every day.
std::vector<std::string> days_assumptions(const PlannedDays& facts);

}  // namespace slabtide
