#include "text_order.h"

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/supply_amount.h"

namespace slabtide {

namespace {

constexpr std::size_t hang = 11;

std::string load_words(const Load& load, const PlannedPour& facts) {
  const Job& job = facts.job;
  std::string zones;
  for (const LoadShare& fraction : load.fractions) {
    zones += fmt::format("{}{}", zones.empty() ? "" : ", ", job.zones[fraction.zone].name);
  }
  return fmt::format(
      "load {}: {}{}, batched {}, here {}{}, empty {} ({}){}", load.number,
      sold_words(load.sold_m3, job.units), short_words(load, job), day_clock(load.batched, job),
      day_clock(load.arrives, job),
      load.waits() ? fmt::format(", waits {}", duration_words(load.waits_min())) : std::string(),
      day_clock(load.empty, job), zones, load.own_admixtures ? ", with admixtures of its own" : "");
}

}  // namespace

std::string text_order(const PlannedPour& facts, const TextStyle& style) {
  const OrderPlan& order = facts.run.order;
  const Job& job = facts.job;
  std::string total = fmt::format(
      "{}: {} as drawn and {} over", sold_words(order.sold_m3, job.units),
      volume_words(order.neat_m3, job.units), percent_words(job.order.allowance_fraction));
  if (tells_low_base(order)) {
    total +=
        fmt::format("; {} more if the base is {} low", volume_words(order.low_base_m3, job.units),
                    thickness_words(job.order.low_base_m, job.units));
  }
  std::string text = style.entry(style.heading("Order"), total, 0, hang);
  for (const Load& load : order.loads) text += style.paragraph(load_words(load, facts), hang, hang);
  return text;
}

}  // namespace slabtide
