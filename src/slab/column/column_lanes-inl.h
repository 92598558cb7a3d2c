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
#include "slab/column/lane_mesh-inl.h"
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
        end_s_(batch.end_s),
        traits_(traits_of<Number>(cases)),
        mesh_(batch, cases),
        weather_(batch, cases),
        kept_cells_(batch.settings.keep_cells ? mesh_.conduction.cells : 0),
        recorder_(batch, cases, solutions, lanes, kept_cells_, workspace),
        time_s_(each_case<Number>(cases, [](const ColumnCase& c) { return c.placed_s; })),
        concrete_c_(each_case<Number>(cases, [](const ColumnCase& c) { return c.concrete_c; })),
        aging_(traits_, mesh_, concrete_c_, transit_h(cases)),
        water_(traits_, aging_.set_age_h(Aging::middle), concrete_c_),
        surface_{0.0, concrete_c_, concrete_c_, 0.0, 0.0},
        energy_{0.0, 0.0, 0.0, mesh_.stored_j_m2()} {}

  void run() {
    settle();
    record(end_s_ >= 0.0);
    auto going = end_s_ - time_s_ > same_instant_s;
    for (int taken = 0; any(going); ++taken) {
      const auto set = aging_.set_age_h(Aging::middle) >= final_set_age_h(traits_.setting);
      const Number early_s(settings_.early_step_s * fraction_of_early_step(taken));
      const Number late_s = min(Number(settings_.late_step_s), max(step_growth * step_s_, early_s));
      const Number usual_s = select(set, late_s, early_s);
      advance(select(going, min(usual_s, end_s_ - time_s_), usual_s));
      const auto still = end_s_ - time_s_ > same_instant_s;
      const auto due = time_s_ - recorded_s_ >= record_every_s - same_instant_s;
      record_due(going, still, due);
      going = still;
    }
    recorder_.finish();
  }

 private:
  using Aging = LaneAging<Number>;
  using Wetness = WetnessOf<Number>;

  Number transit_h(Cases cases) const {
    return each_case<Number>(
        cases, [](const ColumnCase& c) { return (c.placed_s - c.batched_s) / seconds_per_hour; });
  }

  void settle() {
    cover(0.0);
    const auto now = conditions(time_s_, wetness(0.0));
    const auto exchange = settle_surface(mesh_.conduction, LaneLaw<Number>{now, now}, surface_);
    water_.evaporation_kg_m2_h = exchange.evaporation_kg_m2_h;
    mesh_.nodes_c.put(0, surface_.surface_c);
  }

  HWY_FLATTEN void advance(Number step_s) {
    cover(0.5 * step_s);
    const Wetness wet = wetness(0.5 * step_s);
    const LaneLaw<Number> law{conditions(time_s_ + stage_fraction(Stage::first) * step_s, wet),
                              conditions(time_s_ + stage_fraction(Stage::second) * step_s, wet)};
    energy_.source_j_m2 += aging_.heat_j_m2(step_s);
    if (any(abs(step_s - step_s_) > 0.0)) factor(mesh_.conduction, step_s);
    step_s_ = step_s;
    const auto moved = step_columns(mesh_.conduction, law, step_s, surface_);
    mesh_.nodes_c.put(0, surface_.surface_c);
    energy_.surface_j_m2 += moved.surface_j_m2;
    energy_.ground_j_m2 += moved.bottom_j_m2;
    time_s_ += step_s;
    aging_.age(step_s);
    water_.move(step_s, aging_.set_age_h(Aging::middle), mesh_.probe_c(Aging::middle),
                moved.first.evaporation_kg_m2_h, moved.second.evaporation_kg_m2_h);
  }

  /// What lies on it `ahead_s` from now.
  void cover(Number ahead_s) {
    const CoverOf<Number> cover = weather_.cover_at(time_s_ + ahead_s);
    const Number age_h = aging_.set_age_ahead_h(Aging::middle, ahead_s * (1.0 / seconds_per_hour));
    const auto cures = both(traits_.curing_cover_from_set_age_h >= 0.0,
                            age_h >= traits_.curing_cover_from_set_age_h);
    surface_.cover_m2k_w =
        cover.resistance_m2k_w + select(cures, traits_.curing_cover_m2k_w, Number(0.0));
    open_ = select(cures, Number(0.0), cover.open);
  }

  ConditionsOf<Number> conditions(Number time_s, const Wetness& wetness) const {
    return surface_conditions(weather_.at(time_s), traits_, weather_.thin_air(), wetness.vapour,
                              wetness.sun);
  }

  Wetness wetness(Number ahead_s) const {
    return wetness_ahead(traits_, aging_, water_, open_, ahead_s);
  }

  template <class Mask>
  void record_due(Mask going, Mask still, Mask due) {
    const Number last = select(still, Number(0.0), Number(1.0));
    const auto ends = both(going, last > 0.5);
    const auto records = both(going, either(due, last > 0.5));
    if (any(records)) record(records);
    if (!any(ends)) return;
    recorder_.put_energies(lanes_in(ends), {store(energy_.surface_j_m2), store(energy_.ground_j_m2),
                                            store(energy_.source_j_m2),
                                            store(mesh_.stored_j_m2() - energy_.start_j_m2)});
  }

  static ColumnRecorder::Lanes store(Number value) {
    HWY_ALIGN ColumnRecorder::Lanes stored;
    Memory<Number>::store(value, stored.data());
    return stored;
  }

  template <class Mask>
  static ColumnRecorder::Lanes lanes_in(Mask mask) {
    return store(select(mask, Number(1.0), Number(0.0)));
  }

  Number psi(typename Aging::Probe probe) const {
    return resistance_psi(aging_.set_age_h(probe), traits_.setting, traits_.resistance_exponent);
  }

  /// In the order of ColumnHistory.
  template <class Mask>
  void record(Mask which) {
    recorded_s_ = select(which, time_s_, recorded_s_);
    const Row<Number> row{recorder_.next_row(lanes_in(which))};
    row.put(0, time_s_);
    row.put(1, surface_.surface_c);
    row.put(2, mesh_.probe_c(Aging::middle));
    row.put(3, mesh_.weighted_c(mesh_.mean_weight));
    row.put(4, mesh_.weighted_c(mesh_.gradient_weight));
    row.put(5, aging_.set_age_h(Aging::work));
    row.put(6, aging_.set_age_h(Aging::middle));
    row.put(7, psi(Aging::top));
    row.put(8, psi(Aging::work));
    row.put(9, psi(Aging::deep));
    row.put(10, psi(Aging::middle));
    row.put(11, strength_psi(aging_.set_age_h(Aging::work), traits_.strength));
    row.put(12, water_.evaporation_kg_m2_h);
    row.put(13, water_.bleed_kg_m2_h);
    row.put(14, water_.bleed_water_kg_m2);
    for (std::size_t i = 0; i < kept_cells_; ++i) {
      row.put(series_count + i, mesh_.conduction.cells_c[i]);
    }
  }

  static constexpr std::size_t lanes = Memory<Number>::columns;

  const SolverSettings& settings_;
  Number end_s_;
  TraitsOf<Number> traits_;
  LaneMesh<Number> mesh_;
  LaneWeather<Number> weather_;
  std::size_t kept_cells_;
  ColumnRecorder recorder_;
  Number time_s_;
  Number concrete_c_;  // when placed
  Aging aging_;
  LaneWater<Number> water_;
  SurfaceState<Number> surface_;
  EnergyOf<Number> energy_;
  Number recorded_s_ = 0.0;
  Number step_s_ = 0.0;
  Number open_ = 1.0;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
