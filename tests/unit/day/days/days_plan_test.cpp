#include "slabtide/day/days/days_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "report/files/json_days.h"
#include "slabtide/core/units.h"
#include "slabtide/day/days/planned_days.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/report/words/days_facts.h"
#include "support/sample_job.h"

// The day and the hour to choose. That the worse loss decides is ours (stakes.h); what the weather
// does to the slab is tested with the cautions.

namespace slabtide {
namespace {

using test::rectangle;
using test::sample_job;
using test::zone_named;

constexpr int hours_a_day = 24;

UtcTime at(int day, int hour) {
  return UtcTime(Date(2026, 5, 13), boost::posix_time::hours(hours_a_day * (day - 13) + hour));
}

/// Mild days of May 13 to 21 in UTC, all alike but for what a test changes.
Forecast mild_week() {
  Forecast forecast;
  forecast.source = "made up";
  forecast.issued = at(13, 12);
  for (int i = 0; i <= 9 * hours_a_day; ++i) {
    ForecastHour hour;
    hour.at = at(13, i);
    const double phase = 2.0 * std::numbers::pi * (i % hours_a_day - 9) / hours_a_day;
    hour.air_c = 15.0 + 5.0 * std::sin(phase);
    hour.dew_point_c = 9.5;
    hour.wind_10m_m_s = 1.0;
    hour.cloud_fraction = 1.0;
    hour.rain_chance = 0.0;
    forecast.hours.push_back(hour);
  }
  return forecast;
}

template <class Change>
void change(Forecast& forecast, int day, int from_hour, int to_hour, const Change& by) {
  for (ForecastHour& hour : forecast.hours) {
    if (hour.at >= at(day, from_hour) && hour.at < at(day, to_hour)) by(hour);
  }
}

void rain(Forecast& forecast, int day, double chance) {
  change(forecast, day, 0, hours_a_day,
         [chance](ForecastHour& hour) { hour.rain_chance = chance; });
}

/// A broomed pad at 8 o'clock on May 14.
Job pad() { return sample_job({zone_named("pad", rectangle(0, 0, 3.0, 3.0))}); }

struct Days {
  Job job = pad();
  Forecast forecast = mild_week();
  Practice practice = default_practice();
  UtcTime now = at(13, 18);

  Parsed<DaysPlan> plan(const DaysSettings& settings = {}) const {
    return plan_days({job, forecast, practice, now, 6.0}, settings);
  }
  DaysPlan planned(const DaysSettings& settings = {}) const {
    Parsed<DaysPlan> days = plan(settings);
    REQUIRE(days.ok());
    return std::move(*days.value);
  }
};

const ForecastDay& on(const DaysPlan& plan, int day) {
  const auto found =
      std::find_if(plan.days.begin(), plan.days.end(),
                   [day](const ForecastDay& one) { return one.date == at(day, 0).date(); });
  REQUIRE(found != plan.days.end());
  return *found;
}

TEST_CASE("of days alike the job's own date and hour are kept") {
  Days days;
  const DaysPlan plan = days.planned();
  REQUIRE(plan.days.size() == 7);  // 14 to 20
  CHECK(plan.chosen().date == Date(2026, 5, 14));
  CHECK(plan.chosen().start == at(14, 8));
  CHECK(plan.chosen().judged.verdict != Verdict::think_again);
  days.job.pour.date = Date(2026, 5, 17);
  days.job.pour.start = at(17, 8);
  CHECK(days.planned().chosen().date == Date(2026, 5, 17));
  // A wish outside the forecast is none: the first day then.
  days.job.pour.date = Date(2026, 7, 20);
  days.job.pour.start = UtcTime(days.job.pour.date, boost::posix_time::hours(8));
  CHECK(days.planned().chosen().date == Date(2026, 5, 14));
  days.job.pour.date = Date(2026, 5, 17);
  days.job.pour.start = at(17, 8);
  // Of two days equally far the earlier.
  rain(days.forecast, 17, 0.9);
  CHECK(days.planned().chosen().date == Date(2026, 5, 16));
}

TEST_CASE("rain before set stops a day, and its chance orders those it stops") {
  Days days;
  for (int day = 14; day <= 20; ++day) rain(days.forecast, day, 0.9);
  rain(days.forecast, 18, 0.4);
  const DaysPlan plan = days.planned();
  CHECK(plan.chosen().date == Date(2026, 5, 18));
  CHECK(plan.chosen().judged.verdict == Verdict::think_again);
  CHECK(plan.chosen().rain_before_set.chance == 0.4);
  CHECK(on(plan, 19).rain_before_set.chance == 0.9);
}

TEST_CASE("rain in the afternoon moves the start forward, rain after set does no harm") {
  Days days;
  change(days.forecast, 14, 14, hours_a_day, [](ForecastHour& hour) { hour.rain_chance = 0.8; });
  const ForecastDay day = on(days.planned(), 14);
  CHECK(day.start < at(14, 8));
  CHECK(day.judged.verdict != Verdict::think_again);
  CHECK(day.rain_before_set.chance == 0.0);
  CHECK(day.rain_after_set.chance == 0.8);
  CHECK(day.set <= at(14, 14));
  CHECK(day.starts.back().verdict == Verdict::think_again);
}

TEST_CASE("frost on young concrete stops a day") {
  Days days;
  change(days.forecast, 13, 0, 58, [](ForecastHour& hour) {
    *hour.air_c -= 35.0;
    *hour.dew_point_c -= 35.0;
  });
  const DaysPlan plan = days.planned();
  const ForecastDay& day = on(plan, 14);
  REQUIRE(day.frost.at);
  CHECK(*day.frost.at > day.start);
  CHECK(day.frost.min_surface_c <= 0.0);
  CHECK(day.judged.verdict == Verdict::think_again);
  CHECK(plan.chosen().date > Date(2026, 5, 15));
  CHECK_FALSE(plan.chosen().frost.at);
}

TEST_CASE("a start is judged as the plan of the job moved there") {
  Days days;
  days.job.pour.date = Date(2026, 5, 16);
  days.job.pour.start = at(16, 11);
  const WeatherSeries series = *WeatherSeries::from_forecast(days.forecast).value;
  const PourRun run = *run_pour(days.job, series, days.practice, {}).value;
  const Judgement judged = judge(plan_day(days.job, run, days.practice, 6.0).cautions);
  days.job.pour.date = Date(2026, 5, 14);
  days.job.pour.start = at(14, 8);
  const ForecastDay day = on(days.planned(), 16);
  const auto start = std::find_if(day.starts.begin(), day.starts.end(),
                                  [](const TriedStart& one) { return one.at == at(16, 11); });
  REQUIRE(start != day.starts.end());
  CHECK(start->verdict == judged.verdict);
}

TEST_CASE("a crew that is late gets as many hands as it takes, up to what can be found") {
  Days days;
  days.job = sample_job({zone_named("court", rectangle(0, 0, 8.0, 5.0), Finish::stamp)});
  days.job.crew.finishers = 2;
  const ForecastDay found = on(days.planned(), 14);
  CHECK(found.finishers > 2);
  CHECK(found.finishers <= 5);
  CHECK(found.late_min == 0.0);
  CHECK(found.smallest_crew == found.finishers);
  CHECK(found.stakes.cautions[static_cast<std::size_t>(Loss::money)] >= found.finishers - 2);
  days.practice.days.more_finishers = 0;
  const ForecastDay none = on(days.planned(), 14);
  CHECK(none.finishers == 2);
  CHECK(none.late_min > 0.0);
  days.job.crew.finishers = 9;
  const ForecastDay many = on(days.planned(), 14);
  CHECK(many.finishers == 9);
  REQUIRE(many.smallest_crew);
  CHECK(*many.smallest_crew < 9);
}

TEST_CASE("the plant hears of it two hours before it batches, and no start is tried after that") {
  Days days;
  const ForecastDay day = on(days.planned(), 15);
  CHECK(day.first_batched == after_seconds(day.start, -days.job.pour.transit_min * 60.0));
  CHECK(day.call_off_by == after_seconds(day.first_batched, -2.0 * 3600.0));
  days.now = after_seconds(at(14, 12), -2.0 * 3600.0 - days.job.pour.transit_min * 60.0);
  CHECK(on(days.planned(), 14).starts.front().at == at(14, 12));
  days.now = after_seconds(days.now, 1.0);
  CHECK(on(days.planned(), 14).starts.front().at == at(14, 13));
}

TEST_CASE("what the forecast does not hold is left out, with the reason") {
  Days days;
  std::erase_if(days.forecast.hours, [](const ForecastHour& hour) { return hour.at > at(17, 6); });
  days.now = at(14, 20);
  const DaysPlan plan = days.planned();
  REQUIRE(plan.days.size() == 2);
  CHECK(plan.days.front().date == Date(2026, 5, 15));
  // On the 16th the morning after is over at 6:00 only for a start until then.
  CHECK(plan.days.back().starts.back().at == at(16, 6));
  REQUIRE(plan.left_out.size() == 2);
  CHECK(plan.left_out[0].date == Date(2026, 5, 14));
  CHECK(plan.left_out[0].why == "too late to order for it");
  CHECK(plan.left_out[1].why == "the forecast ends Sun 6:00 AM, before the night after it is over");
}

TEST_CASE("a forecast that is too short or gone by leaves no day, and says so") {
  Days days;
  std::erase_if(days.forecast.hours, [](const ForecastHour& hour) { return hour.at > at(14, 20); });
  const Parsed<DaysPlan> shorter = days.plan();
  REQUIRE_FALSE(shorter.ok());
  CHECK(
      shorter.diagnostics.front().message ==
      "the forecast leaves no day to choose: it runs from Wed, May 13, 2026, 12:00 AM to Thu, May "
      "14, 2026, 8:00 PM, and a day needs it from its first batch to 24 h after its start");
  days.now = at(20, 8);
  const Parsed<DaysPlan> gone = days.plan();
  REQUIRE_FALSE(gone.ok());
  CHECK(gone.diagnostics.front().message ==
        "every day of the forecast is past: it ends Thu, May 14, 2026, 8:00 PM, and it is Wed, "
        "May 20, 2026, 8:00 AM now");
  CHECK_FALSE(gone.diagnostics.front().next_step.empty());
}

TEST_CASE("no more than sixteen days are looked at") {
  Days days;
  days.practice.compare.earliest_start_h = 8.0;
  days.practice.compare.latest_start_h = 8.5;
  const std::size_t given = days.forecast.hours.size();
  for (int i = 0; i < 14 * hours_a_day; ++i) {
    ForecastHour hour =
        days.forecast.hours[given - hours_a_day + static_cast<std::size_t>(i % hours_a_day)];
    hour.at = after_seconds(days.forecast.hours.back().at, 3600.0);
    days.forecast.hours.push_back(hour);
  }
  const DaysPlan plan = days.planned();
  CHECK(plan.days.size() + plan.left_out.size() == max_days_ahead);
}

TEST_CASE("days drawn tell how often the finish is lost, the same on any number of threads") {
  Days days;
  days.job = sample_job({zone_named("court", rectangle(0, 0, 5.0, 4.0), Finish::stamp)});
  days.job.crew.finishers = 2;
  DaysSettings settings;
  settings.samples = 8;
  settings.threads = 1;
  std::size_t done = 0;
  settings.progress = [&done](std::size_t count) { done = count; };
  const auto text_of = [&](const DaysSettings& with) {
    return json_days({days.job, days.forecast, days.practice, 6.0, days.now, days.planned(with)});
  };
  const std::string alone = text_of(settings);
  const DaysPlan plan = days.planned(settings);
  for (const ForecastDay& day : plan.days) {
    CHECK(day.days_drawn == 8);
    REQUIRE(day.finish_lost_fraction);
    CHECK(*day.finish_lost_fraction >= 0.0);
    CHECK(*day.finish_lost_fraction <= 1.0);
  }
  // Eleven starts on each of seven days, and one drawn of each at the least.
  CHECK(done >= 7 * 12);  // 7 * (11 + 1)
  settings.threads = 3;
  CHECK(text_of(settings) == alone);
}

TEST_CASE("each day is told what it costs, where the job tells prices") {
  Days days;
  days.job = sample_job({zone_named("court", rectangle(0, 0, 5.0, 4.0), Finish::stamp)});
  for (const ForecastDay& day : days.planned().days) CHECK(!day.cost);
  days.job.prices = Prices{};
  days.job.prices->currency = "$";
  days.job.prices->hand_per_h = 50.0;
  days.job.prices->concrete_per_m3 = 200.0;
  DaysSettings settings;
  settings.samples = 4;
  const PlannedDays told{days.job, days.forecast, days.practice,
                         6.0,      days.now,      days.planned(settings)};
  for (const ForecastDay& day : told.days.days) {
    REQUIRE(day.cost);
    REQUIRE(day.cost->items.size() == 2);
    CHECK(day.cost->items[1].part == CostPart::concrete);
    // 2 m3 and the allowance are 2.8 yd3, of which 3 are sold.
    CHECK(day.cost->items[1].money == doctest::Approx(200.0 * m3_from_yd3(3.0)));
    CHECK(day.cost->items[0].money > 0.0);
  }
  const std::string json = json_days(told);
  CHECK(json.find("\"part\": \"concrete\"") != std::string::npos);
  const auto lines = day_details(told.days.days.front(), told);
  CHECK(std::any_of(lines.begin(), lines.end(), [](const DayDetail& line) {
    return line.label == "Cost" && line.text.rfind("$", 0) == 0;
  }));
}

TEST_CASE("the chance of loss takes rain and lost work together") {
  ForecastDay day;
  CHECK(day.loss_chance() == 0.0);
  day.rain_before_set.chance = 0.5;
  CHECK(day.loss_chance() == doctest::Approx(0.5));
  day.finish_lost_fraction = 0.2;
  CHECK(day.loss_chance() == doctest::Approx(0.6));
}

}  // namespace
}  // namespace slabtide
