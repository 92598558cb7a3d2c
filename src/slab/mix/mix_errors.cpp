#include "slabtide/slab/mix/mix_errors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "slab/process/setting.h"

namespace slabtide {
namespace {

void check(const MixErrors& errors) {
  const std::array factors{
      errors.set_time_factor,  errors.set_span_factor, errors.activation_energy_factor,
      errors.admixture_factor, errors.bleed_factor,    errors.strength_factor,
      errors.expansion_factor};
  const bool all_above_zero = std::all_of(factors.begin(), factors.end(),
                                          [](double f) { return f > 0.0 && std::isfinite(f); });
  if (!all_above_zero || !std::isfinite(errors.discharge_k))
    throw std::invalid_argument("mix: an error is not a factor above 0 or not finite");
}

}  // namespace

MixModel with_errors(const MixModel& mix, const MixErrors& errors) {
  check(errors);
  MixModel result = mix;
  SettingParameters& setting = result.setting;
  const double span_h = mix.setting.final_set_h - mix.setting.initial_set_h;
  setting.initial_set_h *= errors.set_time_factor;
  setting.final_set_h =
      setting.initial_set_h + span_h * errors.set_time_factor * errors.set_span_factor;
  setting.shift_h *= errors.admixture_factor;
  setting.activation_energy_j_mol *= errors.activation_energy_factor;
  result.hydration.tau_h *= errors.set_time_factor;
  result.hydration.set_age_h *= errors.set_time_factor;
  result.hydration.shift_h *= errors.admixture_factor;
  result.strength.start_set_age_h += final_set_age_h(setting) - final_set_age_h(mix.setting);
  result.strength.ultimate_psi *= errors.strength_factor;
  result.bleed_kg_m2_per_mm *= errors.bleed_factor;
  result.expansion_per_k *= errors.expansion_factor;
  result.discharge_c += errors.discharge_k;
  return result;
}

}  // namespace slabtide
