// Read once for each instruction set (Highway's way), hence no plain include guard.
#if defined(SLABTIDE_SLAB_COLUMN_LANES_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_COLUMN_LANES_INL_H
#undef SLABTIDE_SLAB_COLUMN_LANES_INL_H
#else
#define SLABTIDE_SLAB_COLUMN_LANES_INL_H
#endif

#include <array>
#include <cstddef>

#include "slab/bleed-inl.h"
#include "slab/column_batch.h"
#include "slab/hydration-inl.h"
#include "slab/lane_mesh-inl.h"
#include "slab/lane_traits-inl.h"
#include "slab/lane_weather-inl.h"
#include "slab/strength-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

constexpr double same_instant_s = 1.0e-6;

/// Set age at one depth, carried on by the trapezoidal rule.
template <class Number>
struct SettingProbe {
  Number rate;  // hours an hour, now
  Number age_h;
};

template <class Number>
struct SurfaceLaw {
  ConditionsOf<Number> first;
  ConditionsOf<Number> second;

  ExchangeOf<Number> operator()(Number outer_c, Stage stage) const {
    return surface_exchange(stage == Stage::first ? first : second, outer_c);
  }
};

/// Solves as many columns as a number has lanes, side by side, each with steps of its own.
template <class Number>
class ColumnLanes {
 public:
  ColumnLanes(const ColumnBatch& batch, Cases cases, std::span<ColumnSolution> solutions,
              ColumnDesk& desk)
      : settings_(batch.settings),
        end_s_(batch.end_s),
        traits_(traits_of<Number>(cases)),
        mesh_(batch, cases),
        weather_(batch, cases),
        recorder_(batch, cases, solutions, lanes, desk) {
    start(cases);
  }

  void run() {
    settle();
    record(end_s_ >= 0.0);
    auto going = end_s_ - time_s_ > same_instant_s;
    while (any(going)) {
      const auto set = probes_[middle].age_h >= final_set_age_h(traits_.setting);
      const Number usual_s =
          select(set, Number(settings_.late_step_s), Number(settings_.early_step_s));
      advance(select(going, min(usual_s, end_s_ - time_s_), usual_s));
      const auto still = end_s_ - time_s_ > same_instant_s;
      const auto due = time_s_ - recorded_s_ >= record_every_s - same_instant_s;
      record_due(going, still, due);
      going = still;
    }
    recorder_.finish();
  }

 private:
  enum Probe : std::size_t { top, work, deep, middle, probe_count };

  void start(Cases cases) {
    using Case = const ColumnCase&;
    time_s_ = each_case<Number>(cases, [](Case c) { return c.placed_s; });
    const Number batched_s = each_case<Number>(cases, [](Case c) { return c.batched_s; });
    const Number concrete_c = each_case<Number>(cases, [](Case c) { return c.concrete_c; });
    const Number transit_h = (time_s_ - batched_s) * (1.0 / seconds_per_hour);
    start_setting(concrete_c, transit_h);
    start_heat(concrete_c, transit_h);
    surface_ = {0.0, concrete_c, concrete_c, 0.0};
    energy_ = {0.0, 0.0, 0.0, mesh_.stored_j_m2()};
    film_kg_m2_ = bleed_kg_m2_h_ = evaporation_kg_m2_h_ = step_s_ = 0.0;
  }

  /// Until it is placed the concrete ages in the truck at the temperature it arrives with.
  void start_setting(Number concrete_c, Number transit_h) {
    const Number rate = set_rate(concrete_c, traits_.setting.activation_energy_j_mol);
    probes_.fill({rate, rate * transit_h});
    bled_share_ = bleed_share(rate * transit_h, traits_.setting);
  }

  /// Heat released before placing is in the concrete's temperature already.
  void start_heat(Number concrete_c, Number transit_h) {
    const Number rate = hydration_rate(concrete_c, traits_.hydration.activation_energy_j_mol);
    const Number degree = hydration_degree(rate * transit_h, traits_.hydration);
    for (std::size_t i = 0; i < mesh_.slab_cells; ++i) {
      mesh_.heat.age_h.put(i, rate * transit_h);
      mesh_.heat.rate.put(i, rate);
      mesh_.heat.degree.put(i, degree);
    }
  }

  void settle() {
    cover(time_s_);
    const auto now = conditions(time_s_, wetness(0.0));
    const auto exchange = settle_surface(mesh_.conduction, SurfaceLaw<Number>{now, now}, surface_);
    evaporation_kg_m2_h_ = exchange.evaporation_kg_m2_h;
    mesh_.nodes_c.put(0, surface_.surface_c);
  }

  HWY_FLATTEN void advance(Number step_s) {
    cover(time_s_ + 0.5 * step_s);
    const Number wet = wetness(0.5 * step_s);
    const SurfaceLaw<Number> law{
        conditions(time_s_ + stage_share(Stage::first) * step_s, wet),
        conditions(time_s_ + stage_share(Stage::second) * step_s, wet)};
    energy_.source_j_m2 += predict_heat(step_s);
    if (any(abs(step_s - step_s_) > 0.0)) factor(mesh_.conduction, step_s);
    step_s_ = step_s;
    const auto moved = step_columns(mesh_.conduction, law, step_s, surface_);
    mesh_.nodes_c.put(0, surface_.surface_c);
    energy_.surface_j_m2 += moved.surface_j_m2;
    energy_.ground_j_m2 += moved.bottom_j_m2;
    time_s_ += step_s;
    age(step_s);
    move_water(step_s, moved.first.evaporation_kg_m2_h, moved.second.evaporation_kg_m2_h);
  }

  void cover(Number at_s) {
    const CoverOf<Number> cover = weather_.cover_at(at_s);
    surface_.cover_m2k_w = cover.resistance_m2k_w;
    open_ = cover.open;
  }

  ConditionsOf<Number> conditions(Number time_s, Number wetness) const {
    return surface_conditions(weather_.at(time_s), traits_, wetness);
  }

  /// Share of free-water evaporation `ahead_s` from now.
  Number wetness(Number ahead_s) const {
    const Number ahead_h = ahead_s * (1.0 / seconds_per_hour);
    const Number work_h = probes_[work].age_h + ahead_h * probes_[work].rate;
    const auto film = both(traits_.film_from_set_age_h >= 0.0,
                           work_h >= traits_.film_from_set_age_h);
    return open_ * surface_wetness(Number(probes_[top].age_h + ahead_h * probes_[top].rate),
                                   traits_.setting, film);
  }

  /// The heat of the step to come: what the degree of hydration at its predicted end asks for,
  /// less what has been released. Errors of prediction do not add up, since the next step
  /// starts from the corrected age. J/m2 in all.
  Number predict_heat(Number step_s) {
    const Number step_h = step_s * (1.0 / seconds_per_hour);
    const Number per_s = 1.0 / step_s;
    Number sum = 0.0;
    const HeatRows<Number>& heat = mesh_.heat;
    for (std::size_t i = 0; i < mesh_.slab_cells; ++i) {
      const Number degree =
          hydration_degree(Number(heat.age_h[i] + heat.rate[i] * step_h), traits_.hydration);
      const Number source_j_m2 = heat.j_m2[i] * (degree - heat.degree[i]);
      heat.degree.put(i, degree);
      mesh_.conduction.source_w_m2.put(i, source_j_m2 * per_s);
      sum += source_j_m2;
    }
    return sum;
  }

  void age(Number step_s) {
    const Number half_h = step_s * (0.5 / seconds_per_hour);
    const HeatRows<Number>& heat = mesh_.heat;
    for (std::size_t i = 0; i < mesh_.slab_cells; ++i) {
      const Number rate = hydration_rate(mesh_.conduction.cells_c[i],
                                         traits_.hydration.activation_energy_j_mol);
      heat.age_h.put(i, heat.age_h[i] + half_h * (heat.rate[i] + rate));
      heat.rate.put(i, rate);
    }
    for (std::size_t i = 0; i < probe_count; ++i) {
      const Number rate = set_rate(mesh_.probe_c(i), traits_.setting.activation_energy_j_mol);
      probes_[i].age_h += half_h * (probes_[i].rate + rate);
      probes_[i].rate = rate;
    }
  }

  void move_water(Number step_s, Number first_kg_m2_h, Number second_kg_m2_h) {
    const Number step_h = step_s * (1.0 / seconds_per_hour);
    const Number share = bleed_share(probes_[middle].age_h, traits_.setting);
    const Number bled = traits_.total_bleed_kg_m2 * (share - bled_share_);
    bled_share_ = share;
    evaporation_kg_m2_h_ = second_kg_m2_h;
    const Number mean = (1.0 - stage_gamma) * first_kg_m2_h + stage_gamma * second_kg_m2_h;
    bleed_kg_m2_h_ = bled / step_h;
    film_kg_m2_ = max(film_kg_m2_ + bled - mean * step_h, Number(0.0));
  }

  template <class Mask>
  void record_due(Mask going, Mask still, Mask due) {
    const Number last = select(still, Number(0.0), Number(1.0));
    const auto ends = both(going, last > 0.5);
    const auto records = both(going, either(due, last > 0.5));
    if (any(records)) record(records);
    if (!any(ends)) return;
    const Number gained = mesh_.stored_j_m2() - energy_.stored_j_m2;
    recorder_.put_energies(lanes_in(ends),
                           {store(energy_.surface_j_m2), store(energy_.ground_j_m2),
                            store(energy_.source_j_m2), store(gained)});
  }

  using Stored = ColumnRecorder::Lanes;

  static Stored store(Number value) {
    HWY_ALIGN Stored stored;
    Memory<Number>::store(value, stored.data());
    return stored;
  }

  template <class Mask>
  static Stored lanes_in(Mask mask) {
    return store(select(mask, Number(1.0), Number(0.0)));
  }

  template <class Mask>
  void record(Mask which) {
    recorded_s_ = select(which, time_s_, recorded_s_);
    const Row<Number> row{recorder_.next_row(lanes_in(which))};
    const auto psi = [&](Probe probe) HWY_ATTR {
      return resistance_psi(probes_[probe].age_h, traits_.setting, traits_.resistance_exponent);
    };
    row.put(0, time_s_);
    row.put(1, surface_.surface_c);
    row.put(2, mesh_.probe_c(middle));
    row.put(3, mesh_.weighted_c(mesh_.mean_weight));
    row.put(4, mesh_.weighted_c(mesh_.gradient_weight));
    row.put(5, probes_[work].age_h);
    row.put(6, probes_[middle].age_h);
    row.put(7, psi(top));
    row.put(8, psi(work));
    row.put(9, psi(deep));
    row.put(10, psi(middle));
    row.put(11, strength_psi(probes_[work].age_h, traits_.strength));
    row.put(12, evaporation_kg_m2_h_);
    row.put(13, bleed_kg_m2_h_);
    row.put(14, film_kg_m2_);
  }

  static constexpr std::size_t lanes = Memory<Number>::columns;

  const SolverSettings& settings_;
  Number end_s_;
  TraitsOf<Number> traits_;
  LaneMesh<Number> mesh_;
  LaneWeather<Number> weather_;
  ColumnRecorder recorder_;
  std::array<SettingProbe<Number>, probe_count> probes_;
  SurfaceState<Number> surface_;
  struct {
    Number surface_j_m2;
    Number ground_j_m2;
    Number source_j_m2;
    Number stored_j_m2;  // at placing
  } energy_;
  Number time_s_;
  Number recorded_s_ = 0.0;
  Number step_s_;
  Number open_;
  Number bled_share_;
  Number bleed_kg_m2_h_;
  Number evaporation_kg_m2_h_;
  Number film_kg_m2_;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
