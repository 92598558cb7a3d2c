// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_AGING_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_AGING_INL_H
#undef SLABTIDE_SLAB_LANE_AGING_INL_H
#else
#define SLABTIDE_SLAB_LANE_AGING_INL_H
#endif

#include <array>
#include <cstddef>

#include "slab/column/lane_mesh-inl.h"
#include "slab/column/lane_traits-inl.h"
#include "slab/process/hydration-inl.h"
#include "slab/process/setting-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// Heat comes on so slowly that it is renewed for this many steps at once, which takes an eighth of
/// a column's time off: with two, set times move by 0.2 s at most; with six, by 0.6 s.
constexpr int steps_per_heat = 2;

/// The set ages of the columns at four depths, and the hydration of their cells.
template <class Number>
class LaneAging {
 public:
  enum Probe : std::size_t { top, work, deep, middle, probe_count };

  /// Before placing, the concrete ages in the truck at the temperature it arrives with; that
  /// temperature already includes the heat released on the way.
  LaneAging(const TraitsOf<Number>& traits, const LaneMesh<Number>& mesh, Number concrete_c,
            Number transit_h)
      : traits_(traits), mesh_(mesh) {
    rate_.fill(set_rate(concrete_c, traits_.setting.activation_energy_j_mol));
    age_h_.fill(rate_[top] * transit_h);
    const Number rate = hydration_rate(concrete_c, traits_.hydration.activation_energy_j_mol);
    const Number degree = hydration_degree(rate * transit_h, traits_.hydration);
    for (std::size_t i = 0; i < mesh_.slab_cells; ++i) {
      mesh_.heat.age_h.put(i, rate * transit_h);
      mesh_.heat.rate.put(i, rate);
      mesh_.heat.degree.put(i, degree);
    }
  }

  Number set_age_h(Probe probe) const { return age_h_[probe]; }
  Number set_age_ahead_h(Probe probe, Number ahead_h) const {
    return age_h_[probe] + ahead_h * rate_[probe];
  }

  /// The heat of the next step, in total J/m2; that of each cell goes into the mesh.
  Number heat_j_m2(Number step_s) {
    if (steps_since_heat_ == 0) predict_heat(step_s);
    return source_w_m2_ * step_s;
  }

  /// Advances by a step, by the trapezoidal rule over the temperatures at its ends.
  void age(Number step_s) {
    const Number half_h = step_s * (0.5 / seconds_per_hour);
    for (std::size_t i = 0; i < probe_count; ++i) {
      const Number rate = set_rate(mesh_.probe_c(i), traits_.setting.activation_energy_j_mol);
      age_h_[i] += half_h * (rate_[i] + rate);
      rate_[i] = rate;
    }
    since_heat_s_ += step_s;
    steps_since_heat_ = (steps_since_heat_ + 1) % steps_per_heat;
    if (steps_since_heat_ == 0) age_cells();
  }

 private:
  /// For the next `steps_per_heat` steps, if all are as long as this: the degree of hydration
  /// predicted for their end, less what has already been released. Prediction errors do not
  /// accumulate, because each prediction starts from the corrected age.
  void predict_heat(Number step_s) {
    const Number ahead_h = step_s * (steps_per_heat / seconds_per_hour);
    const Number per_s = 1.0 / (steps_per_heat * step_s);
    const HeatRows<Number>& heat = mesh_.heat;
    source_w_m2_ = 0.0;
    for (std::size_t i = 0; i < mesh_.slab_cells; ++i) {
      const Number released = heat.degree[i] + heat.degree_per_s[i] * since_heat_s_;
      const Number mean_rate = heat.rate[i] + heat.rise_per_h[i] * (0.5 * ahead_h);
      const Number degree =
          hydration_degree(Number(heat.age_h[i] + mean_rate * ahead_h), traits_.hydration);
      const Number degree_per_s = (degree - released) * per_s;
      const Number source_w_m2 = heat.j_m2[i] * degree_per_s;
      heat.degree.put(i, released);
      heat.degree_per_s.put(i, degree_per_s);
      mesh_.conduction.source_w_m2.put(i, source_w_m2);
      source_w_m2_ += source_w_m2;
    }
    since_heat_s_ = 0.0;
  }

  /// By all steps since heat was predicted.
  void age_cells() {
    const Number half_h = since_heat_s_ * (0.5 / seconds_per_hour);
    const Number per_h = 0.5 / half_h;
    const HeatRows<Number>& heat = mesh_.heat;
    for (std::size_t i = 0; i < mesh_.slab_cells; ++i) {
      const Number rate =
          hydration_rate(mesh_.conduction.cells_c[i], traits_.hydration.activation_energy_j_mol);
      heat.age_h.put(i, heat.age_h[i] + half_h * (heat.rate[i] + rate));
      heat.rise_per_h.put(i, (rate - heat.rate[i]) * per_h);
      heat.rate.put(i, rate);
    }
  }

  const TraitsOf<Number>& traits_;
  const LaneMesh<Number>& mesh_;
  std::array<Number, probe_count> rate_;  // hours per hour, now
  std::array<Number, probe_count> age_h_;
  Number source_w_m2_ = 0.0;  // of all cells together
  Number since_heat_s_ = 0.0;
  int steps_since_heat_ = 0;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
