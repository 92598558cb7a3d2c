// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_TRAITS_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_TRAITS_INL_H
#undef SLABTIDE_SLAB_LANE_TRAITS_INL_H
#else
#define SLABTIDE_SLAB_LANE_TRAITS_INL_H
#endif

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>

#include "core/numbers-inl.h"
#include "slab/column/cell_weather.h"
#include "slab/column/column_batch.h"
#include "slab/process/bleed.h"
#include "slab/process/hydration.h"
#include "slab/process/setting-inl.h"
#include "slabtide/slab/column/column.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// SettingParameters of the columns in the lanes.
template <class Number>
struct SettingOf {
  Number initial_set_h;
  Number final_set_h;
  Number shift_h;
  Number activation_energy_j_mol;
};

/// HydrationParameters of the columns in the lanes.
template <class Number>
struct HydrationOf {
  Number alpha_u;
  Number tau_h;
  Number beta;
  Number activation_energy_j_mol;
  Number shift_h;
  Number set_age_h;
  Number held_back;
};

/// StrengthParameters of the columns in the lanes.
template <class Number>
struct StrengthOf {
  Number ultimate_psi;
  Number rate_per_day;
  Number start_set_age_h;
};

/// The properties of each column that do not change with time.
template <class Number>
struct TraitsOf {
  SettingOf<Number> setting;
  HydrationOf<Number> hydration;
  StrengthOf<Number> strength;
  Number heat_capacity_of_hydration_j_m3;
  Number resistance_exponent;
  Number hardest_set_age_h;  // from which on the resistance is the largest
  Number absorptance;
  Number dry_absorptance;
  Number sky_view;
  Number convection_factor;
  Number evaporation_factor;
  Number curing_compound_from_set_age_h;
  Number evaporation_film_to_set_age_h;
  Number steady_wetness;  // as ColumnCase, the next two too
  Number curing_cover_from_set_age_h;
  Number curing_cover_m2k_w;
  Number total_bleed_kg_m2;
  Number settling_time_h;
};

/// Packs `read(i)` of each column i into one number; lanes past the last column repeat it.
template <class Number, class Read>
Number each_lane(std::size_t count, const Read& read) {
  HWY_ALIGN LaneArray<Number> values;
  for (std::size_t i = 0; i < values.size(); ++i)
    values[i] = static_cast<typename Memory<Number>::Each>(read(std::min(i, count - 1)));
  return Memory<Number>::load(values.data());
}

/// For the recorder, which is the same for any kind of number.
template <class Number>
HWY_INLINE void put_doubles(Number value, double* to) {
  const LaneArray<Number> each = lanes_of(value);
  std::copy(each.begin(), each.end(), to);
}
template <class Number>
ColumnRecorder::Lanes doubles_of(Number value) {
  ColumnRecorder::Lanes doubles{};
  put_doubles(value, doubles.data());
  return doubles;
}

using Cases = std::span<const ColumnCase* const>;

template <class Number, class Read>
Number each_case(Cases cases, const Read& read) {
  return each_lane<Number>(cases.size(), [&](std::size_t i) { return read(*cases[i]); });
}

template <class Number, class Read>
Number each_mix(Cases cases, const Read& read) {
  return each_lane<Number>(cases.size(), [&](std::size_t i) { return read(*cases[i]->mix); });
}

template <class Number>
SettingOf<Number> setting_of(Cases cases) {
  using Mix = const MixModel&;
  return {each_mix<Number>(cases, [](Mix m) { return m.setting.initial_set_h; }),
          each_mix<Number>(cases, [](Mix m) { return m.setting.final_set_h; }),
          each_mix<Number>(cases, [](Mix m) { return m.setting.shift_h; }),
          each_mix<Number>(cases, [](Mix m) { return m.setting.activation_energy_j_mol; })};
}

template <class Number>
HydrationOf<Number> hydration_of(Cases cases) {
  using Mix = const MixModel&;
  return {each_mix<Number>(cases, [](Mix m) { return m.hydration.alpha_u; }),
          each_mix<Number>(cases, [](Mix m) { return m.hydration.tau_h; }),
          each_mix<Number>(cases, [](Mix m) { return m.hydration.beta; }),
          each_mix<Number>(cases, [](Mix m) { return m.hydration.activation_energy_j_mol; }),
          each_mix<Number>(cases, [](Mix m) { return m.hydration.shift_h; }),
          each_mix<Number>(cases, [](Mix m) { return m.hydration.set_age_h; }),
          each_mix<Number>(cases, [](Mix m) { return m.hydration.held_back; })};
}

template <class Number>
StrengthOf<Number> strength_of(Cases cases) {
  using Mix = const MixModel&;
  return {each_mix<Number>(cases, [](Mix m) { return m.strength.ultimate_psi; }),
          each_mix<Number>(cases, [](Mix m) { return m.strength.rate_per_day; }),
          each_mix<Number>(cases, [](Mix m) { return m.strength.start_set_age_h; })};
}

/// A little late, so that rounding changes nothing.
inline double hardest_set_age_h(const MixModel& mix) {
  constexpr double late = 1.001;
  return late * set_age_at_resistance_h(largest_resistance_psi, mix.setting);
}

template <class Number>
TraitsOf<Number> traits_of(Cases cases) {
  using Case = const ColumnCase&;
  return {
      setting_of<Number>(cases),
      hydration_of<Number>(cases),
      strength_of<Number>(cases),
      each_mix<Number>(
          cases, [](const MixModel& m) { return heat_capacity_of_hydration_j_m3(m.hydration); }),
      resistance_exponent(setting_of<Number>(cases)),
      each_mix<Number>(cases, hardest_set_age_h),
      each_case<Number>(cases, [](Case c) { return c.absorptance; }),
      each_case<Number>(cases, dry_absorptance_of),
      each_case<Number>(cases, [](Case c) { return c.exposure->sky_view; }),
      each_case<Number>(cases, [](Case c) { return c.convection_factor; }),
      each_case<Number>(cases, [](Case c) { return c.evaporation_factor; }),
      each_case<Number>(cases, [](Case c) { return c.curing_compound_from_set_age_h; }),
      each_case<Number>(cases, [](Case c) { return c.evaporation_film_to_set_age_h; }),
      each_case<Number>(cases, [](Case c) { return c.steady_wetness; }),
      each_case<Number>(cases, [](Case c) { return c.curing_cover_from_set_age_h; }),
      each_case<Number>(cases, [](Case c) { return c.curing_cover_m2k_w; }),
      each_case<Number>(cases,
                        [](Case c) {
                          return c.formed_face ? 0.0
                                               : c.bleed_up_fraction * c.mix->bleed_kg_m2_per_mm *
                                                     c.thickness_m * mm_per_m;
                        }),
      each_case<Number>(
          cases, [](Case c) { return c.bleed_time_factor * settling_time_h(c.thickness_m); })};
}

/// Heat gained, released and stored, J/m2 since placing, as in ColumnEnergy.
template <class Number>
struct EnergyOf {
  Number surface_j_m2;
  Number source_j_m2;
  Number start_j_m2;  // stored at placing
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
