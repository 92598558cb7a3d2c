#include "text_supplies.h"

#include <fmt/format.h>

#include "core/text.h"
#include "job/model/wording.h"
#include "report/words/supply_amount.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

namespace {

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

}  // namespace

std::string supply_lines(const std::vector<Supply>& supplies, UnitSystem units,
                         const TextStyle& style) {
  constexpr std::size_t name_width = 24;
  constexpr std::size_t amount_width = 12;
  constexpr std::size_t note_column = 2 + name_width + amount_width;
  std::string text;
  for (const Supply& supply : supplies) {
    const std::string where =
        supply.area_m2 > 0.0
            ? fmt::format("on {}: {}", area_words(supply.area_m2, units), joined(supply.zones))
            : std::string("as ordered, with the allowance");
    text += fmt::format("  {}{}{}\n", pad(supply_words(supply.kind), name_width),
                        pad(supply_amount_words(supply, units), amount_width),
                        wrap(where, style.width - note_column, note_column));
  }
  return text;
}

}  // namespace slabtide
