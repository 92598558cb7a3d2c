#include "made_words.h"

#include <fmt/format.h>

#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

/// With their dates: a sheet may be made long before its day.
template <typename Facts>
std::string made_from_words(const Facts& facts) {
  const Clock clock = clock_of(facts.job);
  std::string words;
  if (!facts.now.is_not_a_date_time()) words = fmt::format("Made {}. ", clock.date_time(facts.now));
  words += "Forecast: " + facts.forecast.source;
  if (facts.forecast.issued) words += ", issued " + clock.date_time(*facts.forecast.issued);
  if (facts.forecast_age_h) words += fmt::format(", {:.0f} h old", *facts.forecast_age_h);
  return words + ".";
}

}  // namespace

std::string made_words(const PlannedPour& facts) { return made_from_words(facts); }

std::string made_words(const PlannedDays& facts) { return made_from_words(facts); }

}  // namespace slabtide
