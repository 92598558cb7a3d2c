#include "mix_model.h"

#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "admixture_shift.h"
#include "job/checks/validate.h"
#include "job/model/wording.h"
#include "mix_temperature.h"
#include "set_estimate.h"
#include "slab/material/materials.h"
#include "slab/process/bleed.h"
#include "slab/process/hydration.h"
#include "slab/process/strength.h"
#include "slabtide/core/units.h"
#include "slabtide/slab/mix/mix_errors.h"

namespace slabtide {
namespace {

SetTimes set_times(const Mix& mix) {
  if (!mix.supplier_initial_set_h) return estimated_set_times(mix);
  return {.initial_h = *mix.supplier_initial_set_h, .final_h = *mix.supplier_final_set_h};
}

std::string ingredients(const Mix& mix) {
  std::string text = fmt::format("w/cm {:.2f}", mix.w_cm);
  if (mix.ash_fraction > 0.0) {
    text += fmt::format(", {} class {} fly ash", percent_words(mix.ash_fraction),
                        mix.ash_class == AshClass::f ? 'F' : 'C');
  }
  if (mix.slag_fraction > 0.0) text += fmt::format(", {} slag", percent_words(mix.slag_fraction));
  if (mix.cement == CementType::type_iii) text += ", type III cement";
  return text;
}

std::string learned_words(const Mix& mix) {
  if (!mix.learned) return {};
  return fmt::format(", by {:.2f} after {} pour{} of this mix in the mix book",
                     mix.learned->set_factor, mix.learned->pours,
                     mix.learned->pours == 1 ? "" : "s");
}

std::string set_note(const Mix& mix, const SettingParameters& setting) {
  const std::string times = fmt::format("set times {} and {} at 73 °F (23 °C) before admixtures",
                                        duration_words(minutes_per_hour * setting.initial_set_h),
                                        duration_words(minutes_per_hour * setting.final_set_h));
  if (!setting.estimated) {
    return fmt::format("{}, the supplier's ASTM C403 figures{}", times, learned_words(mix));
  }
  return fmt::format(
      "{}, estimated from {} (published tables, from memory){}; the supplier's ASTM C403 figures "
      "are better",
      times, ingredients(mix), learned_words(mix));
}

double strength_margin_psi(const Mix& mix) {
  return mix.strength_margin_psi.value_or(usual_strength_margin_psi(mix.specified_strength_psi));
}

std::string strength_note(const Mix& mix) {
  const double margin_psi = strength_margin_psi(mix);
  const double mean_psi = mix.specified_strength_psi + margin_psi;
  return fmt::format(
      "strength at 28 days {:.0f} psi ({:.1f} MPa) on average, {:+.0f} psi over what is specified, "
      "{}",
      mean_psi, mpa_from_psi(mean_psi), margin_psi,
      mix.strength_margin_psi ? "as the job file says"
                              : "as plants aim without test records (ACI 301); `strength_margin` "
                                "in the job file is better");
}

double discharge_c(const Mix& mix) {
  if (const double* typed = std::get_if<double>(&mix.temperature)) return *typed;
  return mix_temperature_c(std::get<IngredientTemperatures>(mix.temperature),
                           mix.cementitious_kg_m3, mix.w_cm);
}

void note_assumptions(const Mix& mix, MixModel& model) {
  if (std::holds_alternative<IngredientTemperatures>(mix.temperature)) {
    model.notes.emplace_back(
        "concrete temperature follows from the ingredients' temperatures (US Army TM 5-852-4)");
  }
  if (mix.aggregate == Aggregate::unknown) {
    model.notes.emplace_back(
        "aggregate not known: expansion 5.5e-6 a °F (9.9e-6 a °C), conductivity 2.0 W/mK");
  }
  if (model.hardly_bleeds)
    model.notes.emplace_back("silica fume: the mix hardly bleeds, evaporation flags are halved");
  if (model.bleed_kg_m2_per_mm == 0.0)
    model.notes.emplace_back("w/cm is so low that no bleed water is expected");
}

SettingParameters setting_parameters(const Mix& mix, const SetTimes& times, double shift_h) {
  return {.initial_set_h = times.initial_h,
          .final_set_h = times.final_h,
          .shift_h = shift_h,
          .activation_energy_j_mol = setting_activation_energy_j_mol(mix.slag_fraction),
          .estimated = !mix.supplier_initial_set_h.has_value()};
}

}  // namespace

MixModel mix_model(const Mix& mix, const std::vector<Admixture>& admixtures) {
  validate(mix);
  validate(admixtures);
  const SetTimes times = set_times(mix);
  AdmixtureShift shift = admixture_shift(admixtures, times.initial_h);
  MixModel model;
  model.setting = setting_parameters(mix, times, shift.hours);
  model.hydration = hydration_parameters(mix);
  hold_early_heat(model.hydration, times.initial_h);
  model.hydration.shift_h = shift.hours;
  model.strength =
      strength_parameters(mix.specified_strength_psi + strength_margin_psi(mix), model.setting);
  model.concrete = concrete_material(mix.aggregate);
  model.bleed_kg_m2_per_mm = total_bleed_kg_m2_per_mm(mix);
  model.expansion_per_k = expansion_per_k(mix.aggregate);
  model.discharge_c = discharge_c(mix);
  model.hardly_bleeds = mix.silica_fume_fraction >= hardly_bleeds_fume_fraction;
  if (mix.learned) {
    model = with_errors(model, {.set_time_factor = mix.learned->set_factor});
    model.learned_log_deviation = mix.learned->log_deviation;
  }
  model.notes.push_back(set_note(mix, model.setting));
  model.notes.push_back(strength_note(mix));
  for (std::string& note : shift.notes) model.notes.push_back(std::move(note));
  note_assumptions(mix, model);
  return model;
}

}  // namespace slabtide
