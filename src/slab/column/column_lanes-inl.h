// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_COLUMN_LANES_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_COLUMN_LANES_INL_H
#undef SLABTIDE_SLAB_COLUMN_LANES_INL_H
#else
#define SLABTIDE_SLAB_COLUMN_LANES_INL_H
#endif

#include <array>
#include <cstddef>
#include <span>

#include "slab/column/column_batch.h"
#include "slab/column/column_steps.h"
#include "slab/column/lane_aging-inl.h"
#include "slab/column/lane_drying-inl.h"
#include "slab/column/lane_modes-inl.h"
#include "slab/column/lane_steps-inl.h"
#include "slab/column/lane_traits-inl.h"
#include "slab/column/lane_water-inl.h"
#include "slab/column/lane_weather-inl.h"
#include "slab/process/strength-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// Solves as many columns as a number has lanes, side by side, each with its own steps.
template <class Number>
class ColumnLanes {
 public:
  ColumnLanes(const ColumnBatch& batch, Cases cases, std::span<ColumnSolution> solutions,
              ColumnWorkspace& workspace)
      : settings_(batch.settings),
        span_s_(each_case<Number>(
            cases, [&batch](const ColumnCase& c) { return batch.end_s - c.placed_s; })),
        traits_(traits_of<Number>(cases)),
        modes_(batch, cases),
        weather_(batch, cases),
        profile_points_(batch.settings.keep_profile ? profile_points : 0),
        recorder_(batch, cases, solutions, lanes, profile_points_, workspace),
        concrete_c_(each_case<Number>(cases, [](const ColumnCase& c) { return c.concrete_c; })),
        aging_(traits_, modes_, concrete_c_, transit_h(cases)),
        steps_(settings_, traits_, weather_, aging_),
        water_(traits_, aging_.set_age_h(Aging::middle), concrete_c_),
        surface_{0.0, concrete_c_, concrete_c_, 0.0, 0.0},
        energy_{0.0, 0.0, modes_.stored_j_m2()} {}

  void run() {
    begin_under(lid_ahead(0.0), span_s_ >= 0.0);
    record(span_s_ >= 0.0);
    auto going = span_s_ - elapsed_s_ > same_instant_s;
    while (any(going)) {
      const Number step_s = steps_.next_s(elapsed_s_);
      advance(select(going, min(step_s, span_s_ - elapsed_s_), step_s));
      const auto still = span_s_ - elapsed_s_ > same_instant_s;
      const auto due =
          either(elapsed_s_ - recorded_s_ >= record_every_s - same_instant_s, steps_.cut_short());
      record_due(going, still, due);
      going = still;
    }
    recorder_.finish();
  }

 private:
  using Aging = LaneAging<Number>;
  using Conditions = ConditionsOf<Number>;

  Number transit_h(Cases cases) const {
    return each_case<Number>(
        cases, [](const ColumnCase& c) { return (c.placed_s - c.batched_s) / seconds_per_hour; });
  }

  /// Balances the surface under what newly lies on it, in the lanes where that has changed. The
  /// column itself has had no time to change.
  template <class Mask>
  void begin_under(const LidOf<Number>& lid, Mask changed) {
    lid_ = lid;
    surface_.cover_m2k_w = lid.cover_m2k_w;
    const Conditions now = conditions(0.0);
    const auto law = [&now](Number outer_c) HWY_ATTR { return surface_exchange(now, outer_c); };
    SurfaceState<Number> begun = surface_;
    const auto exchange =
        balance(law, surface_.surface_c, surface_.cover_m2k_w, surface_.inward_w_m2, begun);
    surface_.outer_c = select(changed, begun.outer_c, surface_.outer_c);
    surface_.inward_w_m2 = select(changed, begun.inward_w_m2, surface_.inward_w_m2);
    surface_.rising_w_m2_s = select(changed, Number(0.0), surface_.rising_w_m2_s);
    water_.evaporation_kg_m2_h =
        select(changed, exchange.evaporation_kg_m2_h, water_.evaporation_kg_m2_h);
  }

  HWY_FLATTEN void advance(Number step_s) {
    const LidOf<Number> lid = lid_ahead(0.5 * step_s);
    const auto changed = differs(lid, lid_);
    if (any(changed)) begin_under(lid, changed);
    energy_.source_j_m2 += aging_.release_heat_j_m2(step_s);
    if (any(abs(step_s - step_s_) > 0.0)) response_m2k_w_ = prepare_steps(modes_.rows, step_s);
    step_s_ = step_s;
    const Number before_w_m2 = surface_.inward_w_m2;
    const Conditions ending = conditions(step_s);
    const auto law = [&ending](Number outer_c)
                         HWY_ATTR { return surface_exchange(ending, outer_c); };
    const auto exchange = step_columns(modes_.rows, law, step_s, response_m2k_w_, surface_);
    energy_.surface_j_m2 += 0.5 * step_s * (before_w_m2 + surface_.inward_w_m2);
    elapsed_s_ += step_s;
    aging_.age(step_s);
    water_.move(step_s, aging_.set_age_h(Aging::middle), aging_.probe_c(Aging::middle),
                exchange.evaporation_kg_m2_h);
  }

  LidOf<Number> lid_ahead(Number ahead_s) const {
    const Number ahead_h = ahead_s * (1.0 / seconds_per_hour);
    return lid_of(traits_, weather_.cover_at(elapsed_s_ + ahead_s),
                  aging_.set_age_ahead_h(Aging::middle, ahead_h),
                  aging_.set_age_ahead_h(Aging::work, ahead_h));
  }

  Conditions conditions(Number ahead_s) const {
    const WetnessOf<Number> wet =
        wetness_under(traits_, lid_, water_.lost_kg_m2(ahead_s * (1.0 / seconds_per_hour)));
    return surface_conditions(weather_.at(elapsed_s_ + ahead_s), traits_, weather_.thin_air(),
                              wet.vapour, wet.sun);
  }

  template <class Mask>
  void record_due(Mask going, Mask still, Mask due) {
    const Number ended = select(going, select(still, Number(0.0), Number(1.0)), Number(0.0));
    const auto ends = ended > 0.5;
    const auto records = both(going, either(due, ends));
    if (any(records)) record(records);
    if (!any(ends)) return;
    recorder_.put_energies(doubles_of(ended),
                           {doubles_of(energy_.surface_j_m2), doubles_of(energy_.source_j_m2),
                            doubles_of(Number(modes_.stored_j_m2() - energy_.start_j_m2))});
  }

  /// Powers are taken only where some lane is not yet past the largest resistance.
  Number psi(typename Aging::Probe probe) const {
    const Number age_h = aging_.set_age_h(probe);
    if (!any(traits_.hardest_set_age_h >= age_h)) return largest_resistance_psi;
    return resistance_psi(age_h, traits_.setting, traits_.resistance_exponent);
  }

  /// In the order of ColumnHistory.
  template <class Mask>
  void record(Mask which) {
    recorded_s_ = select(which, elapsed_s_, recorded_s_);
    double* const row = recorder_.next_row(doubles_of(select(which, Number(1.0), Number(0.0))));
    const auto put = [row](std::size_t entry, Number value)
                         HWY_ATTR { put_doubles(value, row + entry * lanes); };
    put(0, elapsed_s_);
    put(1, surface_.surface_c);
    put(2, aging_.probe_c(Aging::middle));
    put(3, modes_.mean_c());
    put(4, modes_.gradient_c());
    put(5, aging_.set_age_h(Aging::work));
    put(6, aging_.set_age_h(Aging::middle));
    put(7, psi(Aging::top));
    put(8, psi(Aging::work));
    put(9, psi(Aging::deep));
    put(10, psi(Aging::middle));
    put(11, strength_psi(aging_.set_age_h(Aging::work), traits_.strength));
    put(12, water_.evaporation_kg_m2_h);
    put(13, water_.bleed_kg_m2_h);
    put(14, water_.bleed_water_kg_m2);
    for (std::size_t i = 0; i < profile_points_; ++i) {
      put(series_count + i, modes_.profile_c(i));
    }
  }

  static constexpr std::size_t lanes = Memory<Number>::columns;

  const SolverSettings& settings_;
  Number span_s_;  // from placing to the end
  TraitsOf<Number> traits_;
  LaneModes<Number> modes_;
  LaneWeather<Number> weather_;
  std::size_t profile_points_;
  ColumnRecorder recorder_;
  Number elapsed_s_ = 0.0;  // since placing
  Number concrete_c_;       // when placed
  Aging aging_;
  LaneSteps<Number> steps_;
  LaneWater<Number> water_;
  SurfaceState<Number> surface_;
  EnergyOf<Number> energy_;
  Number recorded_s_ = 0.0;
  Number step_s_ = 0.0;
  Number response_m2k_w_ = 0.0;
  LidOf<Number> lid_{};
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
