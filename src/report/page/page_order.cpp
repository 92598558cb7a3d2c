#include "page_order.h"

#include <array>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/words/cost_words.h"
#include "report/words/supply_amount.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// More names than these have no room in a line of the truck sheet, which counts them (ours).
constexpr std::size_t max_names_on_truck = 4;

std::string names_of(const std::vector<std::string>& zones, const Job& job) {
  std::string names;
  for (const std::string& zone : zones) {
    names += (names.empty() ? "" : ", ") + named_place(zone, job).str();
  }
  if (zones.size() <= max_names_on_truck) return names;
  Element counted("bdi");
  return counted.set("data-short", fmt::format("{} zones", zones.size()))
      .add(Element("span").add_markup(names))
      .str();
}

View load_view(const Load& load, std::size_t index, const Job& job) {
  const std::string json = pointer("/trucks", index) + "/";
  std::vector<std::string> zones;
  for (const LoadShare& fraction : load.fractions) zones.push_back(job.zones[fraction.zone].name);
  View view;
  return view
      .put("number", figure_view(json + "number", load.number, fmt::format("{}", load.number)))
      .put("volume",
           figure_view(json + "sold_m3", load.sold_m3, sold_words(load.sold_m3, job.units)))
      .put("batched", time_view(json + "batched", load.batched, job))
      .put("arrives", time_view(json + "arrives", load.arrives, job))
      .put("empty", time_view(json + "empty", load.empty, job))
      .put("zones", names_of(zones, job))
      .flag("own_admixtures", load.own_admixtures)
      .flag("is_short", load.is_short)
      .flag("over_limit", load.over_limit);
}

std::string_view amount_key(SupplyKind kind) {
  constexpr std::array<std::string_view, 4> keys{"amount_m3", "amount_kg", "amount_l", "amount_m2"};
  return keys[static_cast<std::size_t>(supply_unit(kind))];
}

View supply_view(const Supply& supply, std::size_t index, const Job& job) {
  const std::string json = pointer("/supplies", index) + "/";
  View view;
  view.put("what", supply_words(supply.kind))
      .put("amount", figure_view(fmt::format("{}{}", json, amount_key(supply.kind)), supply.amount,
                                 supply_amount_words(supply, job.units)));
  if (supply.area_m2 <= 0.0) return view;
  View on;
  on.put("area",
         figure_view(json + "area_m2", supply.area_m2, area_words(supply.area_m2, job.units)))
      .put("zones", names_of(supply.zones, job));
  return view.put("on", std::move(on));
}

}  // namespace

View order_view(const PlannedPour& facts) {
  const OrderPlan& order = facts.run.order;
  const Job& job = facts.job;
  const std::string ordered = sold_words(order.sold_m3, job.units);
  const auto volume = [&job](const char* json, double m3) {
    return figure_view(json, m3, volume_words(m3, job.units));
  };
  std::vector<View> loads;
  for (std::size_t i = 0; i < order.loads.size(); ++i) {
    loads.push_back(load_view(order.loads[i], i, job));
  }
  std::vector<View> supplies;
  for (std::size_t i = 0; i < facts.plan.supplies.size(); ++i) {
    supplies.push_back(supply_view(facts.plan.supplies[i], i, job));
  }
  View view;
  if (const auto cost = cost_of_pour(facts); cost && job.prices) {
    view.put("cost", View().put("says", cost_sentence(*cost, job.prices->currency)));
  }
  if (tells_low_base(order)) {
    view.put("low_base", View()
                             .put("more", volume("/order/low_base_m3", order.low_base_m3))
                             .put("low", thickness_words(job.order.low_base_m, job.units)));
  }
  return view.put("ordered", figure_view("/order/sold_m3", order.sold_m3, ordered))
      .put("neat", volume("/order/neat_m3", order.neat_m3))
      .put("allowance", percent_words(job.order.allowance_fraction))
      .put("loads", std::move(loads))
      .put("supplies", std::move(supplies));
}

}  // namespace slabtide
