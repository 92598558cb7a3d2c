#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <limits>

#include "support/plan_of.h"
#include "support/sample_job.h"

// What must hold for the windows on any day: ours, from the meaning of the terms.

namespace slabtide {

namespace {

using test::plan_of;
using test::Planned;

/// A change that must not move any window in one direction by more than rounding.
constexpr double rounding_min = 1.0;

struct RandomDay {
  double low_c;
  double range_k;
  double wind_m_s;
  double cloud;
  double concrete_c;
  int start_h;
  Finish finish;
};

RandomDay random_day() {
  const auto number = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
  return {.low_c = static_cast<double>(number(6, 22)),
          .range_k = static_cast<double>(number(4, 14)),
          .wind_m_s = static_cast<double>(number(0, 6)),
          .cloud = number(0, 10) / 10.0,
          .concrete_c = static_cast<double>(number(14, 32)),
          .start_h = number(6, 11),
          .finish = *rc::gen::element(Finish::stamp, Finish::texture_roll, Finish::broom,
                                      Finish::float_finish, Finish::trowel)};
}

Job job_of(const RandomDay& day) {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 3, 3), day.finish)});
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(day.start_h));
  TypedWeather weather;
  weather.low_c = day.low_c;
  weather.high_c = day.low_c + day.range_k;
  weather.wind_10m_m_s = day.wind_m_s;
  weather.cloud = {day.cloud, day.cloud, day.cloud, day.cloud};
  weather.dew_point_c = day.low_c - 2.0;
  job.weather = weather;
  job.mix.temperature = day.concrete_c;
  return job;
}

/// Resistance only: a warmer slab can keep its sheen for longer, so windows that wait for the sheen
/// are checked separately.
std::vector<double> stiffness_minutes(const Job& job) {
  const Planned planned = plan_of(job);
  const PartPlan& part = planned.plan.zones[0].whole;
  std::vector<double> minutes;
  const auto add = [&](const std::optional<UtcTime>& time) {
    minutes.push_back(time ? seconds_between(job.pour.start, *time) / 60.0
                           : std::numeric_limits<double>::infinity());
  };
  for (const OperationWindow& window : part.windows) {
    if (window.operation < Operation::saw_dry) add(window.closes);
  }
  add(part.initial_set);
  add(part.final_set);
  for (const SawPlan& saw : test::uncut_saws(job, planned)) add(saw.opens);
  return minutes;
}

void never_later(const Job& job, const Job& quicker) {
  const auto before = stiffness_minutes(job);
  const auto after = stiffness_minutes(quicker);
  RC_ASSERT(before.size() == after.size());
  for (std::size_t i = 0; i < before.size(); ++i) RC_ASSERT(after[i] <= before[i] + rounding_min);
}

}  // namespace

TEST_CASE("warmer air or concrete never makes a window later") {
  CHECK(rc::check("air", [] {
    const Job job = job_of(random_day());
    Job warmer = job;
    auto& weather = std::get<TypedWeather>(warmer.weather);
    weather.low_c += 3.0;
    weather.high_c += 3.0;
    never_later(job, warmer);
  }));
  CHECK(rc::check("concrete", [] {
    const Job job = job_of(random_day());
    Job warmer = job;
    warmer.mix.temperature = std::get<double>(job.mix.temperature) + 4.0;
    never_later(job, warmer);
  }));
}

TEST_CASE("more sun never makes a window later, shade all day never earlier") {
  CHECK(rc::check("sun", [] {
    const Job job = job_of(random_day());
    Job shaded = job;
    shaded.zones[0].shaded = true;
    // At night the open sky cools what a roof keeps warm, so only the day is compared.
    Job lit = job;
    const auto in_shade = plan_of(shaded).plan.zones[0].whole;
    const auto in_sun = plan_of(lit).plan.zones[0].whole;
    RC_PRE(in_shade.initial_set && in_shade.initial_set->time_of_day().hours() < 19);
    RC_ASSERT(*in_sun.initial_set <= after_seconds(*in_shade.initial_set, 60.0 * rounding_min));
  }));
}

TEST_CASE("an accelerator never makes a window later, a retarder never earlier") {
  CHECK(rc::check("admixtures", [] {
    Job job = job_of(random_day());
    Job quicker = job;
    quicker.mix.admixtures = {{AdmixtureKind::accelerator_non_chloride, 1300.0, {}, {}}};
    never_later(job, quicker);
    Job slower = job;
    slower.mix.admixtures = {{AdmixtureKind::retarder, 200.0, {}, {}}};
    never_later(slower, job);
  }));
}

TEST_CASE("a window opens before it is open all over, and closes after it opens, or says so") {
  CHECK(rc::check("order", [] {
    const Job job = job_of(random_day());
    const Planned planned = plan_of(job);
    for (const OperationWindow& window : planned.plan.zones[0].whole.windows) {
      if (window.opens && window.open_all_over) RC_ASSERT(*window.opens <= *window.open_all_over);
      if (window.opens && window.closes && *window.closes < *window.opens) {
        RC_ASSERT(!window.note.empty());
      }
      if (!window.opens) RC_ASSERT(!window.note.empty());
    }
  }));
}

TEST_CASE("halving the steps and the spacing of the points moves no set time by a minute") {
  CHECK(rc::check("refinement", [] {
    const Job job = job_of(random_day());
    SolverSettings fine;
    fine.early_step_s /= 2.0;
    fine.late_step_s /= 2.0;
    fine.slab_spacing_m /= 2.0;
    fine.ground_spacing_m /= 2.0;
    const auto coarse_part = plan_of(job).plan.zones[0].whole;
    const auto fine_part = plan_of(job, fine).plan.zones[0].whole;
    RC_PRE(coarse_part.final_set.has_value());
    RC_ASSERT(std::abs(seconds_between(*coarse_part.initial_set, *fine_part.initial_set)) < 60.0);
    RC_ASSERT(std::abs(seconds_between(*coarse_part.final_set, *fine_part.final_set)) < 60.0);
  }));
}

}  // namespace slabtide
