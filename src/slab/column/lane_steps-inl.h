// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_STEPS_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_STEPS_INL_H
#undef SLABTIDE_SLAB_LANE_STEPS_INL_H
#else
#define SLABTIDE_SLAB_LANE_STEPS_INL_H
#endif

#include "slab/column/column_steps.h"
#include "slab/column/lane_aging-inl.h"
#include "slab/column/lane_traits-inl.h"
#include "slab/column/lane_weather-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// How long the columns' steps are, each by itself.
template <class Number>
class LaneSteps {
 public:
  LaneSteps(const SolverSettings& settings, const TraitsOf<Number>& traits,
            const LaneWeather<Number>& weather, const LaneAging<Number>& aging)
      : settings_(settings), traits_(traits), weather_(weather), aging_(aging) {}

  /// The next step, so long after placing.
  Number next_s(Number elapsed_s) {
    const auto set = aging_.set_age_h(Aging::middle) >= final_set_age_h(traits_.setting);
    const Number early_s(settings_.early_step_s * fraction_of_early_step(taken_++));
    const Number grown_s = select(was_set_ > 0.5, step_growth * usual_s_,
                                  Number(first_late_fraction * settings_.early_step_s));
    usual_s_ = select(set, min(Number(settings_.late_step_s), grown_s), early_s);
    was_set_ = select(set, Number(1.0), Number(0.0));
    const Number until_s = until_change_s(elapsed_s);
    const Number cut_s = min(usual_s_, until_s + past_change_s);
    step_s_ = select(until_s > too_near_s, cut_s, usual_s_);
    return step_s_;
  }

  /// Where the step was shorter than usual, so as to end at a change.
  auto cut_short() const { return usual_s_ - step_s_ > same_instant_s; }

 private:
  using Aging = LaneAging<Number>;

  /// As far as can be told from now.
  Number until_change_s(Number elapsed_s) const {
    Number until_s = weather_.until_cover_changes_s(elapsed_s);
    for (const Number age_h :
         {final_set_age_h(traits_.setting), traits_.curing_cover_from_set_age_h})
      until_s = min(until_s, aging_.until_s(Aging::middle, age_h));
    for (const Number age_h :
         {traits_.curing_compound_from_set_age_h, traits_.evaporation_film_to_set_age_h})
      until_s = min(until_s, aging_.until_s(Aging::work, age_h));
    return until_s;
  }

  const SolverSettings& settings_;
  const TraitsOf<Number>& traits_;
  const LaneWeather<Number>& weather_;
  const Aging& aging_;
  int taken_ = 0;
  Number was_set_ = 0.0;
  Number usual_s_ = 0.0;
  Number step_s_ = 0.0;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
