#include "trade_words.h"

#include <algorithm>
#include <array>

namespace slabtide {

namespace {

struct TradeWord {
  std::string_view said;
  std::string_view usual;
};

/// Common practice, no source. No word stands here that is told apart by what is planned.
constexpr auto trade_words = std::to_array<TradeWord>({
    {"light broom", "broom"},
    {"fine broom", "broom"},
    {"medium broom", "broom"},
    {"heavy broom", "broom"},
    {"coarse broom", "broom"},
    {"rough broom", "broom"},
    {"broomed", "broom"},
    {"stamped", "stamp"},
    {"stamped concrete", "stamp"},
    {"texture", "texture roll"},
    {"texture roller", "texture roll"},
    {"floated", "float"},
    {"wood float", "float"},
    {"mag float", "float"},
    {"troweled", "trowel"},
    {"trowelled", "trowel"},
    {"smooth", "trowel"},
    {"smooth trowel", "trowel"},
    {"steel trowel", "trowel"},
    {"hard trowel", "trowel"},
    {"exposed", "exposed aggregate"},
    {"exposed agg", "exposed aggregate"},
    {"rock salt", "salt"},
    {"line pump", "pump"},
    {"boom pump", "pump"},
    {"trailer pump", "pump"},
    {"concrete pump", "pump"},
    {"pump truck", "pump"},
    {"truck chute", "chute"},
    {"off the truck", "chute"},
    {"tailgate", "chute"},
    {"motor buggy", "buggy"},
    {"power buggy", "buggy"},
    {"buggies", "buggy"},
    {"wheelbarrows", "wheelbarrow"},
    {"wheel barrow", "wheelbarrow"},
    {"curing compound", "film"},
    {"poly", "plastic"},
    {"plastic sheet", "plastic"},
    {"blankets", "blanket"},
    {"curing blanket", "blanket"},
    {"curing blankets", "blanket"},
    {"crushed stone", "gravel"},
    {"stone", "gravel"},
    {"dirt", "soil"},
    {"wet saw", "wet"},
    {"early entry saw", "early entry"},
});

}  // namespace

std::string usual_word(std::string word) {
  constexpr std::string_view of_finishes = " finish";
  if (word.ends_with(of_finishes)) word.resize(word.size() - of_finishes.size());
  const auto found = std::find_if(trade_words.begin(), trade_words.end(),
                                  [&word](const TradeWord& each) { return each.said == word; });
  return found == trade_words.end() ? word : std::string(found->usual);
}

}  // namespace slabtide
