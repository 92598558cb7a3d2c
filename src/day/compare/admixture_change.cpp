#include "admixture_change.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "day/pour/load_dose.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr double floz_per_gal = 128.0;
constexpr double ml_per_l = 1000.0;
constexpr double ml_per_floz = l_per_floz * ml_per_l;

bool slows(const Admixture& admixture) {
  return admixture.kind == AdmixtureKind::retarder || admixture.kind == AdmixtureKind::stabiliser;
}

bool any_slows(const std::vector<Admixture>& list) {
  return std::any_of(list.begin(), list.end(), slows);
}

AdmixtureUse& use_of(std::vector<AdmixtureUse>& uses, AdmixtureKind kind) {
  const auto found = std::find_if(uses.begin(), uses.end(),
                                  [kind](const AdmixtureUse& use) { return use.kind == kind; });
  if (found != uses.end()) return *found;
  uses.push_back({kind, 0.0, 0.0, false});
  return uses.back();
}

void add_use(std::vector<AdmixtureUse>& uses, const Admixture& admixture, double concrete_m3,
             double cementitious_kg_m3) {
  constexpr double per_hundred = 0.01;
  AdmixtureUse& use = use_of(uses, admixture.kind);
  const auto dose = admixture.dose_ml_100kg ? admixture.dose_ml_100kg : admixture.dose_percent;
  if (dose) use.amount += *dose * per_hundred * cementitious_kg_m3 * concrete_m3;
  use.dose_is_unknown = use.dose_is_unknown || !dose;
  use.concrete_m3 += concrete_m3;
}

}  // namespace

std::vector<Admixture> without_retarder(const std::vector<Admixture>& list) {
  std::vector<Admixture> kept;
  std::remove_copy_if(list.begin(), list.end(), std::back_inserter(kept), slows);
  return kept;
}

bool has_retarder(const Job& job) {
  const auto in_zone = [](const Zone& zone) {
    return zone.admixtures && any_slows(*zone.admixtures);
  };
  const auto in_load = [](const LoadNote& note) { return any_slows(note.admixtures); };
  return any_slows(job.mix.admixtures) ||
         std::any_of(job.zones.begin(), job.zones.end(), in_zone) ||
         std::any_of(job.order.loads.begin(), job.order.loads.end(), in_load);
}

std::vector<AdmixtureUse> admixture_use(const Job& job, const OrderPlan& order) {
  std::vector<AdmixtureUse> uses;
  for (const Load& load : order.loads) {
    for (const LoadShare& fraction : load.fractions) {
      const double concrete_m3 = (fraction.to_fraction - fraction.from_fraction) *
                                 volume_m3(job.zones[fraction.zone]) *
                                 (1.0 + job.order.allowance_fraction);
      for (const Admixture& admixture : admixtures_of(job, load, job.zones[fraction.zone])) {
        add_use(uses, admixture, concrete_m3, job.mix.cementitious_kg_m3);
      }
    }
  }
  return uses;
}

std::string_view admixture_words(AdmixtureKind kind) {
  switch (kind) {
    case AdmixtureKind::retarder:
      return "retarder";
    case AdmixtureKind::stabiliser:
      return "stabilizer";
    case AdmixtureKind::accelerator_chloride:
      return "calcium chloride";
    case AdmixtureKind::accelerator_non_chloride:
      return "accelerator";
  }
  return "admixture";
}

std::string amount_words(double amount, AdmixtureKind kind, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  if (kind == AdmixtureKind::accelerator_chloride) {
    return us ? fmt::format("{:.1f} lb", lb_from_kg(amount)) : fmt::format("{:.1f} kg", amount);
  }
  if (!us) return fmt::format("{:.1f} L", amount / ml_per_l);
  const double floz = amount / ml_per_floz;
  return floz < floz_per_gal ? fmt::format("{:.0f} fl oz", floz)
                             : fmt::format("{:.1f} gal", floz / floz_per_gal);
}

std::string dose_figure(const Admixture& admixture, UnitSystem units) {
  if (admixture.dose_percent) return fmt::format("{:g}", *admixture.dose_percent);
  if (!admixture.dose_ml_100kg) return fmt::format("{:+g} h", admixture.shift_h.value_or(0.0));
  constexpr double tenths = 10.0;
  return units == UnitSystem::us
             ? fmt::format(
                   "{:g}",
                   std::round(tenths * floz_cwt_from_ml_100kg(*admixture.dose_ml_100kg)) / tenths)
             : fmt::format("{:g}", std::round(*admixture.dose_ml_100kg));
}

std::string dose_label(const Admixture& admixture, UnitSystem units) {
  std::string figure = dose_figure(admixture, units);
  if (admixture.dose_percent) return figure + "%";
  if (!admixture.dose_ml_100kg) return figure;
  return figure + (units == UnitSystem::us ? " oz/cwt" : " mL/100kg");
}

std::string dose_words(const Admixture& admixture, UnitSystem units) {
  std::string figure = dose_figure(admixture, units);
  if (admixture.dose_percent) return figure + " %";
  if (!admixture.dose_ml_100kg) return figure;
  return figure + (units == UnitSystem::us ? " fl oz/cwt" : " mL/100 kg");
}

}  // namespace slabtide
