#include "plain_values.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>
#include <boost/date_time/posix_time/time_formatters.hpp>

#include "core/typed_date.h"
#include "core/typed_place.h"
#include "quantity_words.h"
#include "table_words.h"
#include "trade_words.h"

namespace slabtide {

namespace {

/// Keys whose texts are names or times, however much they look like figures.
constexpr auto texts = std::to_array<std::string_view>(
    {"name", "forecast", "time_zone", "clock", "start", "placed_at", "zone_order", "zones", "after",
     "reached_over", "shaded_zones", "admixture_zones"});
constexpr auto truths = std::to_array<std::string_view>({"shaded", "tied", "base_plastic"});
/// Keys of weights that are ordered by the sack as well.
constexpr auto contents = std::to_array<std::string_view>({"cement", "cementitious"});
/// Keys whose words crews have others for.
constexpr auto trade_keys = std::to_array<std::string_view>({"finish", "hauling", "curing"});
/// Keys of points, plain; with a unit's suffix they are in that unit.
constexpr auto point_keys =
    std::to_array<std::string_view>({"outline", "path", "at", "from", "to"});

template <std::size_t N>
bool is_one_of(std::string_view key, const std::array<std::string_view, N>& keys) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

/// To nine decimals, so that 4'6" is 4.5 and not a neighbour of it.
double tidy(double value) {
  constexpr double places = 1e9;
  return std::round(value * places) / places;
}

std::optional<WrittenQuantity> figure_of(std::string_view text, UnitSystem system) {
  const std::array kinds{&length_quantity,       &thickness_quantity, &temperature_quantity,
                         &wind_quantity,         &content_quantity,   &strength_quantity,
                         &placing_rate_quantity, &volume_quantity,    &dose_quantity,
                         &fraction_quantity,     &hours_quantity};
  for (const Quantity* const kind : kinds) {
    if (auto said = parse_quantity(text, *kind, system)) return said;
  }
  return std::nullopt;
}

class Plain {
 public:
  explicit Plain(UnitSystem system) : system_(system) {}

  void table(TomlTable& table) const {
    for (TomlEntry& one : table.entries) entry(one);
  }

 private:
  void entry(TomlEntry& one) const {
    if (auto* const inner = std::get_if<TomlTable>(&one.value.held)) return table(*inner);
    if (auto* const list = std::get_if<TomlArray>(&one.value.held)) return items(one.key, *list);
    if (const auto* const text = std::get_if<std::string>(&one.value.held)) {
      text_entry(one, std::string(*text));
    }
  }

  void items(std::string_view key, TomlArray& list) const {
    for (TomlValue& item : list) {
      if (auto* const inner = std::get_if<TomlTable>(&item.held)) table(*inner);
      if (auto* const inner = std::get_if<TomlArray>(&item.held)) items(key, *inner);
      const auto* const text = std::get_if<std::string>(&item.held);
      if (text == nullptr || !is_one_of(key, point_keys)) continue;
      const auto said = parse_quantity(*text, length_quantity, system_);
      if (!said) continue;
      const Unit& usual = length_quantity.usual(system_);
      item.held =
          tidy(said->unit == nullptr ? said->value : usual.from_si(said->unit->to_si(said->value)));
    }
  }

  void text_entry(TomlEntry& one, const std::string& text) const {
    if (one.key == "date") return put_date(one, text);
    if (one.key == "start") return put_start(one, text);
    if (one.key == "latitude" || one.key == "longitude") {
      if (const auto deg = parse_angle_deg(text, one.key == "latitude" ? "NS" : "EW")) {
        one.value.held = *deg;
      }
      return;
    }
    if (is_one_of(one.key, texts)) return;
    if (is_one_of(one.key, trade_keys)) {
      one.value.held = usual_word(plain_word(text));
      return;
    }
    if (is_one_of(one.key, truths)) {
      if (text == "yes" || text == "no") one.value.held = text == "yes";
      return;
    }
    if (const auto sacks = parse_sacks(text, system_); sacks && is_one_of(one.key, contents)) {
      one.key = "sacks";
      one.value.held = *sacks;
      return;
    }
    const std::string_view key = one.key;
    if (const auto count = parse_count(text, key.substr(key.rfind('_') + 1), system_)) {
      one.value.held = *count;
      return;
    }
    const auto said = figure_of(without_noun(text, one.key), system_);
    if (!said) return;
    if (said->unit != nullptr && !one.key.ends_with(fmt::format("_{}", said->unit->suffix))) {
      one.key += fmt::format("_{}", said->unit->suffix);
    }
    one.value.held = tidy(said->value);
  }

  void put_date(TomlEntry& one, const std::string& text) const {
    const TypedDate typed = parse_typed_date(text, {system_ == UnitSystem::us});
    if (!typed.date) return;
    one.value.held = TomlMoment{boost::gregorian::to_iso_extended_string(*typed.date)};
  }

  /// A start with its day, "5/14/2026 8 AM", as a file has it; one of the clock alone as it stands.
  void put_start(TomlEntry& one, const std::string& text) const {
    const auto typed = parse_typed_instant(text, {system_ == UnitSystem::us});
    if (!typed || typed->offset) return;
    one.value.held = TomlMoment{boost::posix_time::to_iso_extended_string(typed->local)};
  }

  UnitSystem system_;
};

}  // namespace

TomlTable with_plain_values(TomlTable tree) {
  const TomlEntry* const units = find(tree, "units");
  const auto* const word =
      units == nullptr ? nullptr : std::get_if<std::string>(&units->value.held);
  const bool si = word != nullptr && *word == "si";
  Plain(si ? UnitSystem::si : UnitSystem::us).table(tree);
  return tree;
}

}  // namespace slabtide
