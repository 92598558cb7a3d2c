#include "day/field/weighing.h"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "day/field/seen_day.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

using test::rectangle;
using test::sample_job;
using test::zone_named;

/// A planned pad with one cell.
class OnePad {
 public:
  OnePad()
      : job_(sample_job({zone_named("pad", rectangle(0, 0, 0.6, 0.6), Finish::stamp)})),
        forecast_(
            high_low_forecast(std::get<TypedWeather>(job_.weather), job_.site, job_.pour.date)),
        practice_(default_practice()),
        planned_(test::plan_of(job_)) {}

  PlannedPour planned(const std::vector<Observation>& readings) const {
    return {job_, forecast_, practice_, planned_.run, planned_.plan, std::nullopt, {readings}};
  }
  SeenDay see(const std::vector<Observation>& readings, std::size_t samples = 100) const {
    EnsembleSettings settings;
    settings.samples = samples;
    return see_day(planned(readings), settings);
  }
  WeighedDays weigh(const std::vector<Observation>& readings, std::size_t samples = 100) const {
    const SampleScale scale = sample_scale(job_, planned_.run, forecast_, practice_.spread);
    DayModel model(job_, planned_.run, planned_.plan, practice_, scale);
    const auto sightings =
        sightings_of(planned_.run, planned_.plan, {readings}, model, practice_.reading);
    EnsembleSettings settings;
    settings.samples = samples;
    return weigh_days(model, planned_.run, sightings, practice_.reading, settings);
  }
  UtcTime stamp_opens() const {
    return *test::window_of(planned_.plan.zones[0].whole, Operation::stamp).opens;
  }
  const Job& job() const { return job_; }

 private:
  Job job_;
  Forecast forecast_;
  Practice practice_;
  test::Planned planned_;
};

Observation reading(ObservationKind kind, UtcTime at, std::optional<double> value = std::nullopt) {
  return {kind, at, value, "pad", {}, {}};
}

UtcTime minutes_later(UtcTime at, double minutes) { return after_seconds(at, 60.0 * minutes); }

double width_min(const SeenDay& seen) { return 2.0 * seen.plan.sureness->either_way_min.value(); }

TEST_CASE("without readings the days weigh the same") {
  const WeighedDays weighed = OnePad().weigh({}, 50);
  CHECK(weighed.effective_days == doctest::Approx(50.0));
  CHECK_FALSE(weighed.moved);
}

TEST_CASE("an early thumbprint moves the rest of the day ahead and makes it surer") {
  const OnePad pad;
  const SeenDay before = pad.see({});
  const SeenDay after =
      pad.see({reading(ObservationKind::thumbprint, minutes_later(pad.stamp_opens(), -30.0))});
  MESSAGE("ahead ", after.ahead_min, " min; band ", width_min(before), " then ", width_min(after));
  CHECK(after.ahead_min > 15.0);
  CHECK(after.ahead_min < 35.0);
  CHECK(width_min(after) < 0.6 * width_min(before));
  CHECK(after.observations_counted == 1);
  CHECK(after.misfits.empty());
  const std::string words = seen_words(after, pad.job(), pad.job().pour.start);
  MESSAGE(words);
  CHECK(words.find("ahead of the plan; pad now opens ") != std::string::npos);
}

TEST_CASE("what the readings do not speak of stays as planned, to the bit") {
  WeighedDays weighed;
  weighed.uncertain_inputs = even_uncertain_inputs(200);
  double sum = 0.0;
  for (const UncertainInputs& one : weighed.uncertain_inputs) {
    weighed.weights.push_back(std::exp(one.of(UncertainInput::set_time)));
    sum += weighed.weights.back();
  }
  for (double& weight : weighed.weights) weight /= sum;
  const UncertainInputs mean = weighed.mean();
  // Weighted by e^z a normal distribution moves by 1 (slightly less if truncated at 2.5
  // deviations).
  CHECK(mean.of(UncertainInput::set_time) == doctest::Approx(0.9).epsilon(0.1));
  CHECK(mean.of(UncertainInput::delay) == 0.0);
  CHECK(mean.of(UncertainInput::cloud) == 0.0);
}

TEST_CASE("fifty times the same reading is not fifty readings") {
  const OnePad pad;
  const Observation one =
      reading(ObservationKind::thumbprint, minutes_later(pad.stamp_opens(), -25.0));
  const SeenDay once = pad.see({one});
  const SeenDay often = pad.see(std::vector<Observation>(50, one));
  MESSAGE("band after one: ", width_min(once), " min, after fifty: ", width_min(often));
  CHECK(width_min(often) <= width_min(once) * 1.02);
  // Observed: 20 of 22 min; 16 if all of the error is treated as individual.
  CHECK(width_min(often) > 0.82 * width_min(once));
  CHECK(often.ahead_min == doctest::Approx(once.ahead_min).epsilon(0.25));
}

TEST_CASE("a reading far from all that was drawn still leaves many days that count") {
  const OnePad pad;
  for (const double off_min : {-70.0, -45.0, 60.0, 95.0}) {
    const WeighedDays weighed = pad.weigh(
        {reading(ObservationKind::thumbprint, minutes_later(pad.stamp_opens(), off_min))}, 200);
    double sum = 0.0;
    for (const double weight : weighed.weights) {
      REQUIRE(std::isfinite(weight));
      sum += weight;
    }
    MESSAGE(off_min, " min off: worth ", weighed.effective_days, " of 200 days, ",
            weighed.misfits.size(), " misfits");
    CHECK(sum == doctest::Approx(1.0));
    CHECK(weighed.effective_days > 40.0);
  }
}

TEST_CASE("what no day has does not count, and says so") {
  const OnePad pad;
  const WeighedDays weighed =
      pad.weigh({reading(ObservationKind::thumbprint, minutes_later(pad.stamp_opens(), -170.0))});
  REQUIRE(weighed.misfits.size() == 1);
  MESSAGE(weighed.misfits[0].why);
  CHECK(weighed.misfits[0].why.find("further off than on any day") != std::string::npos);
  CHECK(weighed.counted.empty());
  CHECK(weighed.effective_days == doctest::Approx(100.0));
}

TEST_CASE("readings that contradict each other are not averaged") {
  const OnePad pad;
  const UtcTime opens = pad.stamp_opens();
  SUBCASE("a print no longer taken before the thumbprint") {
    const WeighedDays weighed =
        pad.weigh({reading(ObservationKind::thumbprint, minutes_later(opens, 20.0)),
                   reading(ObservationKind::print_firm, minutes_later(opens, -10.0))});
    REQUIRE(weighed.misfits.size() == 1);
    CHECK(weighed.misfits[0].readings.size() == 2);
    CHECK(weighed.misfits[0].why.find("cannot come after") != std::string::npos);
    CHECK(weighed.counted.empty());
  }
  SUBCASE("the thumbprint twice, an hour apart") {
    const WeighedDays weighed =
        pad.weigh({reading(ObservationKind::thumbprint, minutes_later(opens, -30.0)),
                   reading(ObservationKind::thumbprint, minutes_later(opens, 40.0))});
    REQUIRE(weighed.misfits.size() == 1);
    CHECK(weighed.misfits[0].why.find("it happens only once") != std::string::npos);
  }
  SUBCASE("fast by the thumb and yet soft two hours later") {
    const WeighedDays weighed =
        pad.weigh({reading(ObservationKind::thumbprint, minutes_later(opens, -35.0)),
                   reading(ObservationKind::print_firm, minutes_later(opens, 115.0))});
    REQUIRE(weighed.misfits.size() == 1);
    CHECK(weighed.misfits[0].why.find("does not fit what was noted before") != std::string::npos);
    CHECK(weighed.counted.size() == 1);
  }
}

TEST_CASE("each kind of reading moves what it should") {
  const OnePad pad;
  const UtcTime noon = UtcTime(pad.job().pour.date, boost::posix_time::hours(12));
  const auto mean_of = [&pad](const Observation& one, UncertainInput unknown) {
    return pad.weigh({one}, 200).mean().of(unknown);
  };
  // The sample day has 18 °C concrete, 20 °C at its high, wind 3 m/s x 0.45.
  CHECK(mean_of(reading(ObservationKind::concrete_temperature, noon, 20.0),
                UncertainInput::concrete) > 0.5);
  CHECK(mean_of(reading(ObservationKind::air_temperature, noon, 23.0), UncertainInput::air) > 0.5);
  CHECK(mean_of(reading(ObservationKind::wind, noon, 3.5), UncertainInput::wind) > 0.5);
  CHECK(mean_of(reading(ObservationKind::humidity, noon, 0.6), UncertainInput::dew_point) > 0.3);
  CHECK(mean_of(reading(ObservationKind::placed, minutes_later(pad.job().pour.start, 20.0)),
                UncertainInput::delay) > 0.5);
  CHECK(mean_of(reading(ObservationKind::sheen_gone, minutes_later(pad.job().pour.start, 40.0)),
                UncertainInput::bleed) < -0.2);
  CHECK(mean_of(reading(ObservationKind::print_firm, minutes_later(pad.stamp_opens(), 120.0)),
                UncertainInput::set_time) > 0.5);
}

TEST_CASE("a saw that did not ravel rules out only that it would have") {
  const OnePad pad;
  const SeenDay seen =
      pad.see({reading(ObservationKind::sawed, minutes_later(pad.stamp_opens(), 600.0))});
  CHECK(std::abs(seen.ahead_min) < 3.0);
}

TEST_CASE("without bands the day is seen all the same") {
  const OnePad pad;
  const std::vector<Observation> readings{
      reading(ObservationKind::thumbprint, minutes_later(pad.stamp_opens(), -30.0))};
  const SeenDay banded = pad.see(readings);
  const SeenDay bare = pad.see(readings, 0);
  CHECK(bare.observations_counted == banded.observations_counted);
  CHECK(bare.ahead_min > 10.0);
  CHECK(bare.ahead_min == doctest::Approx(banded.ahead_min).epsilon(0.15));
  CHECK_FALSE(bare.plan.sureness);
  CHECK_FALSE(bare.plan.zones[0].whole.final_band);
}

TEST_CASE("any number of threads weighs the same") {
  const OnePad pad;
  const std::vector<Observation> readings{
      reading(ObservationKind::thumbprint, minutes_later(pad.stamp_opens(), -30.0))};
  EnsembleSettings settings;
  settings.samples = 40;
  settings.threads = 1;
  const SeenDay one = see_day(pad.planned(readings), settings);
  settings.threads = 3;
  const SeenDay three = see_day(pad.planned(readings), settings);
  CHECK(one.ahead_min == three.ahead_min);
  CHECK(one.plan.zones[0].whole.final_band->late == three.plan.zones[0].whole.final_band->late);
}

}  // namespace
}  // namespace slabtide
