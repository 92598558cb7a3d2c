#include "json_cost.h"

#include <nlohmann/json.hpp>

#include "report/words/cost_words.h"
#include "report/words/decimals.h"

namespace slabtide {

Json json_cost(const std::optional<PourCost>& cost, const Job& job) {
  if (!cost || !job.prices) return nullptr;
  Json json{{"currency", job.prices->currency}, {"likely", hundredths(cost->likely())}};
  if (const auto mean = cost->expected()) json["expected"] = hundredths(*mean);
  json["parts"] = Json::array();
  for (const CostItem& item : cost->items) {
    json["parts"].push_back({{"part", cost_part_id(item.part)}, {"money", hundredths(item.money)}});
  }
  json["left_out"] = Json::array();
  for (const CostPart part : cost->left_out) json["left_out"].push_back(cost_part_id(part));
  json["says"] = cost_sentence(*cost, job.prices->currency);
  return json;
}

}  // namespace slabtide
