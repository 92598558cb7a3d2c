#include "text_plant_order.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/utf8.h"
#include "day/compare/admixture_change.h"
#include "day/pour/load_dose.h"
#include "day/pour/pour_span.h"
#include "job/model/wording.h"
#include "report/words/call_off_words.h"
#include "report/words/made_words.h"
#include "report/words/supply_amount.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

/// The ingredients that the job names, with what they are a share of.
std::string mix_order_words(const Mix& mix, UnitSystem units) {
  // Water that was only reckoned is nothing to hold the plant to.
  const std::string water = mix.water_source == WaterSource::told
                                ? fmt::format("w/cm {:.2f} at most, ", mix.w_cm)
                                : std::string();
  std::string words = fmt::format(
      "{}, {}{} air, {} of cementitious", strength_words(mix.specified_strength_psi, units), water,
      percent_words(mix.air_fraction), content_words(mix.cementitious_kg_m3, units));
  if (mix.ash_fraction > 0.0)
    words += fmt::format(", {} of it fly ash", percent_words(mix.ash_fraction));
  if (mix.slag_fraction > 0.0)
    words += fmt::format(", {} of it slag", percent_words(mix.slag_fraction));
  if (mix.silica_fume_fraction > 0.0)
    words += fmt::format(", {} of it silica fume", percent_words(mix.silica_fume_fraction));
  return words;
}

std::string admixture_line(const AdmixtureUse& use, double sold_fraction, const Job& job) {
  const std::string name(admixture_words(use.kind));
  if (use.dose_is_unknown) return fmt::format("  {}, by the supplier's own dose\n", name);
  return fmt::format("  {}: {}\n", name,
                     amount_words(use.amount * sold_fraction, use.kind, job.units));
}

std::string load_lines(const Load& load, const Job& job) {
  std::string text =
      fmt::format("Load {}: {}, on site {}, batched {}, empty {}{}\n", load.number,
                  sold_words(load.sold_m3, job.units), day_clock(load.arrives, job),
                  day_clock(load.batched, job), day_clock(load.empty, job), short_words(load, job));
  if (load.waits()) {
    text += fmt::format("  waits {} on site until the load before is empty at {}\n",
                        duration_words(load.waits_min()), day_clock(load.starts, job));
  }
  if (is_dosed_in_part(job, load)) {
    return text + fmt::format("  {}\n", dosed_in_part_words(job, load));
  }
  OrderPlan alone;
  alone.loads = {load};
  for (const AdmixtureUse& use : admixture_use(job, alone)) {
    text += admixture_line(use, load.sold_m3 / load.volume_m3, job);
  }
  return text;
}

std::string_view hauling_words(Hauling hauling) {
  switch (hauling) {
    case Hauling::chute:
      return "off the chute";
    case Hauling::motor_buggy:
      return "into buggies";
    case Hauling::wheelbarrow:
      return "into wheelbarrows";
    case Hauling::pump:
      return "into a pump";
  }
  return "off the chute";
}

}  // namespace

std::string text_plant_order(const PlannedPour& facts) {
  const Job& job = facts.job;
  const OrderPlan& order = facts.run.order;
  std::string text = fmt::format("Concrete for {}\n", shown_date(job.pour.date, clock_style(job)));
  text += made_words(facts) + "\n";
  text += fmt::format("Job: {}, at {:g}, {:g}\n", printable(job.site.name), job.site.latitude_deg,
                      job.site.longitude_deg);
  text += fmt::format("Total: {} in {} load{} ({} as drawn and {} over)\n",
                      sold_words(order.sold_m3, job.units), order.loads.size(),
                      order.loads.size() == 1 ? "" : "s", volume_words(order.neat_m3, job.units),
                      percent_words(job.order.allowance_fraction));
  text += fmt::format("Mix: {}; slump {}\n", mix_order_words(job.mix, job.units),
                      job.mix.slump_m ? thickness_words(*job.mix.slump_m, job.units)
                                      : std::string("as the mix design has it"));
  text += fmt::format("Temperature: {} at the chute, never over {}\n",
                      temperature_words(facts.run.mixes.front().discharge_c, job.units),
                      temperature_words(facts.practice.limits.hot_concrete_c, job.units));
  for (const Load& load : order.loads) text += load_lines(load, job);
  text += fmt::format("Discharge {}, empty within {:.0f} min of batching\n",
                      hauling_words(job.pour.hauling), job.order.discharge_limit_min);
  text += fmt::format(
      "Call it off {}: ask the plant, some want more notice\n",
      call_off_words(placing_span(order).first_batched, job.pour.date, job, facts.practice.days));
  if (tells_low_base(order)) {
    text += fmt::format("Have {} more on standby: a base {} low takes it\n",
                        volume_words(order.low_base_m3, job.units),
                        thickness_words(job.order.low_base_m, job.units));
  }
  return text;
}

}  // namespace slabtide
