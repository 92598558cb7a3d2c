#include "report/words/made_words.h"

#include <doctest/doctest.h>

#include "support/sample_job.h"

namespace slabtide {
namespace {

PlannedDays days_of(const Forecast& forecast) {
  PlannedDays facts;
  facts.job = test::sample_job({});
  facts.forecast = forecast;
  return facts;
}

}  // namespace

TEST_CASE("a report says when it was made and from which forecast, as far as that is known") {
  const UtcTime eve(Date(2026, 5, 13), Duration(18, 0, 0));
  PlannedDays facts = days_of({.source = "hourly table", .issued = {}, .hours = {}, .notes = {}});
  facts.now = eve;
  CHECK(made_words(facts) == "Made Wed, May 13, 2026, 6:00 PM. Forecast: hourly table.");
  facts.forecast.issued = after_seconds(eve, -7200.0);
  facts.forecast_age_h = 2.0;
  CHECK(made_words(facts) ==
        "Made Wed, May 13, 2026, 6:00 PM. Forecast: hourly table, issued Wed, May 13, 2026, "
        "4:00 PM, 2 h old.");
  facts.now = UtcTime();
  facts.forecast_age_h.reset();
  CHECK(made_words(facts) == "Forecast: hourly table, issued Wed, May 13, 2026, 4:00 PM.");
}

}  // namespace slabtide
