#pragma once

#include <string>
#include <vector>

#include "slabtide/day/pour/order.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Applies `change` to every admixture list of a job: those of the mix, the zones and the loads.
template <class Change>
void change_all_admixtures(Job& job, const Change& change) {
  job.mix.admixtures = change(job.mix.admixtures);
  for (Zone& zone : job.zones) {
    if (zone.admixtures) zone.admixtures = change(*zone.admixtures);
  }
  for (LoadNote& note : job.order.loads) note.admixtures = change(note.admixtures);
}

/// `list` without the admixtures that slow the set.
std::vector<Admixture> without_retarder(const std::vector<Admixture>& list);
bool has_retarder(const Job& job);

/// How much of one kind the whole order needs: mL of a liquid, or kg of calcium chloride.
struct AdmixtureUse {
  AdmixtureKind kind = AdmixtureKind::retarder;
  double amount = 0.0;
  double concrete_m3 = 0.0;      ///< the concrete that it goes into
  bool dose_is_unknown = false;  ///< given as the supplier's hours instead
};

/// One entry for each kind that is used.
std::vector<AdmixtureUse> admixture_use(const Job& job, const OrderPlan& order);

std::string_view admixture_words(AdmixtureKind kind);  ///< "retarder"
/// "2 fl oz/cwt", "130 mL/100 kg"; calcium chloride "1 %".
std::string dose_words(const Admixture& admixture, UnitSystem units);
/// "74 fl oz", "2.1 L"; calcium chloride "11.3 lb". `amount` as in AdmixtureUse.
std::string amount_words(double amount, AdmixtureKind kind, UnitSystem units);
/// The same, as short as a table needs: "2 oz/cwt".
std::string dose_label(const Admixture& admixture, UnitSystem units);
/// Only the number, without its unit.
std::string dose_figure(const Admixture& admixture, UnitSystem units);

}  // namespace slabtide
