#include "cost_words.h"

#include <fmt/format.h>

#include "job/model/wording.h"

namespace slabtide {

std::string left_out_sentence(const std::vector<CostPart>& parts) {
  std::string words;
  for (const CostPart part : parts) {
    words += words.empty() ? " Left out, no price given: " : ", ";
    words += cost_part_words(part);
  }
  return words.empty() ? words : words + ".";
}

std::string cost_sentence(const PourCost& cost, const std::string& currency) {
  std::string words = money_words(cost.likely(), currency) + " on the likely day";
  for (std::size_t i = 0; i < cost.items.size(); ++i) {
    words += fmt::format("{} {} {}", i == 0 ? ":" : ",", cost_part_words(cost.items[i].part),
                         money_words(cost.items[i].money, currency));
  }
  words += ".";
  if (const auto mean = cost.expected()) {
    words += fmt::format(" On average over possible days {}, with what lost finishes cost to redo.",
                         money_words(*mean, currency));
  }
  return words + left_out_sentence(cost.left_out);
}

std::string cost_in_short(const PourCost& cost, const std::string& currency) {
  std::string words = money_words(cost.likely(), currency) + " on the likely day";
  if (const auto mean = cost.expected())
    words += fmt::format(", {} on average over possible days", money_words(*mean, currency));
  return words;
}

}  // namespace slabtide
