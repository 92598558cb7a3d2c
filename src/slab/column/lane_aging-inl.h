// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_AGING_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_AGING_INL_H
#undef SLABTIDE_SLAB_LANE_AGING_INL_H
#else
#define SLABTIDE_SLAB_LANE_AGING_INL_H
#endif

#include <array>
#include <cstddef>

#include "slab/column/lane_modes-inl.h"
#include "slab/column/lane_traits-inl.h"
#include "slab/process/hydration-inl.h"
#include "slab/process/setting-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// Heat comes on so slowly that it is renewed for this many steps at once, which takes an eighth of
/// a column's time off and moves set times by 0.4 s at most.
constexpr int steps_per_heat = 2;

/// The set ages of the columns at the probes, and the hydration at the points that release heat.
template <class Number>
class LaneAging {
 public:
  enum Probe : std::size_t { top, work, deep, middle };

  /// Before placing, the concrete ages in the truck at the temperature it arrives with; that
  /// temperature already includes the heat released on the way.
  LaneAging(const TraitsOf<Number>& traits, LaneModes<Number>& modes, Number concrete_c,
            Number transit_h)
      : traits_(traits), modes_(modes), probe_c_(modes.probes_c()) {
    rate_.fill(set_rate(concrete_c, traits_.setting.activation_energy_j_mol));
    age_h_.fill(rate_[top] * transit_h);
    const Number rate = hydration_rate(concrete_c, traits_.hydration.activation_energy_j_mol);
    for (std::size_t i = 0; i < heat_points; ++i) {
      heat_[i] = {rate * transit_h,
                  rate,
                  0.0,
                  hydration_degree(Number(rate * transit_h), traits_.hydration),
                  0.0,
                  traits_.heat_capacity_of_hydration_j_m3 * modes_.heat_thickness_m(i)};
    }
  }

  Number set_age_h(Probe probe) const { return age_h_[probe]; }
  Number set_age_ahead_h(Probe probe, Number ahead_h) const {
    return age_h_[probe] + ahead_h * rate_[probe];
  }
  /// How long until a probe has this set age, as fast as it ages now; forever if it is older.
  Number until_s(Probe probe, Number age_h) const {
    const Number left_h = age_h - age_h_[probe];
    return select(left_h > 0.0, left_h * seconds_per_hour / rate_[probe], Number(forever_s));
  }
  Number probe_c(Probe probe) const { return probe_c_[probe]; }

  /// Releases the heat of the next step. Returns it in total, J/m2.
  Number release_heat_j_m2(Number step_s) {
    if (steps_since_heat_ == 0) predict_heat(step_s);
    return released_w_m2_ * step_s;
  }

  /// Advances by a step, by the trapezoidal rule over the temperatures at its ends.
  void age(Number step_s) {
    const Number half_h = step_s * (0.5 / seconds_per_hour);
    probe_c_ = modes_.probes_c();
    for (std::size_t i = 0; i < probe_count; ++i) {
      const Number rate = set_rate(probe_c_[i], traits_.setting.activation_energy_j_mol);
      age_h_[i] += half_h * (rate_[i] + rate);
      rate_[i] = rate;
    }
    since_heat_s_ += step_s;
    steps_since_heat_ = (steps_since_heat_ + 1) % steps_per_heat;
    if (steps_since_heat_ == 0) age_heat();
  }

 private:
  /// Hydration at a point.
  struct Heat {
    Number age_h;         // equivalent, at 21.1 °C
    Number rate;          // hours per hour, now
    Number rise_per_h;    // of the rate, since heat was last predicted
    Number degree;        // for which heat had been released when it was last predicted
    Number degree_per_s;  // since then
    Number j_m2;          // that one unit of degree releases
  };

  /// For the next `steps_per_heat` steps, if all are as long as this: the degree of hydration
  /// predicted for their end, less what has already been released. Prediction errors do not
  /// accumulate, because each prediction starts from the corrected age.
  void predict_heat(Number step_s) {
    const Number ahead_h = step_s * (steps_per_heat / seconds_per_hour);
    const Number per_s = 1.0 / (steps_per_heat * step_s);
    std::array<Number, heat_points> w_m2;
    released_w_m2_ = 0.0;
    for (std::size_t i = 0; i < heat_points; ++i) {
      Heat& heat = heat_[i];
      const Number mean_rate = heat.rate + heat.rise_per_h * (0.5 * ahead_h);
      const Number degree =
          hydration_degree(Number(heat.age_h + mean_rate * ahead_h), traits_.hydration);
      heat.degree += heat.degree_per_s * since_heat_s_;
      heat.degree_per_s = (degree - heat.degree) * per_s;
      w_m2[i] = heat.j_m2 * heat.degree_per_s;
      released_w_m2_ += w_m2[i];
    }
    modes_.release(w_m2);
    since_heat_s_ = 0.0;
  }

  /// By all steps since heat was predicted.
  void age_heat() {
    const Number half_h = since_heat_s_ * (0.5 / seconds_per_hour);
    const Number per_h = 0.5 / half_h;
    const auto now_c = modes_.heat_points_c();
    for (std::size_t i = 0; i < heat_points; ++i) {
      Heat& heat = heat_[i];
      const Number rate = hydration_rate(now_c[i], traits_.hydration.activation_energy_j_mol);
      heat.age_h += half_h * (heat.rate + rate);
      heat.rise_per_h = (rate - heat.rate) * per_h;
      heat.rate = rate;
    }
  }

  const TraitsOf<Number>& traits_;
  LaneModes<Number>& modes_;
  std::array<Number, probe_count> probe_c_;
  std::array<Number, probe_count> rate_;  // hours per hour, now
  std::array<Number, probe_count> age_h_;
  std::array<Heat, heat_points> heat_;
  Number released_w_m2_ = 0.0;
  Number since_heat_s_ = 0.0;
  int steps_since_heat_ = 0;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
