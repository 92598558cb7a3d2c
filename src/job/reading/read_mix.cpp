#include "read_mix.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <limits>
#include <optional>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "job/model/limits.h"
#include "job/model/usual_water.h"
#include "job/toml/quantity_words.h"
#include "read_admixture.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr Range waters_kg_m3{kg_m3_from_lb_yd3(80.0), kg_m3_from_lb_yd3(600.0)};
/// Range of real mixes: wider than in any published table (our choice).
constexpr Range final_over_initial{1.1, 3.0};
/// Six sacks of cement per cubic yard, the usual exterior flatwork mix, if nothing is given
/// [trade].
constexpr double usual_cementitious_kg_m3 = kg_m3_from_lb_yd3(564.0);
constexpr double lb_per_sack = 94.0;

constexpr auto cement_types = std::to_array<Word<CementType>>({{"I/II", CementType::type_i_ii},
                                                               {"I", CementType::type_i_ii},
                                                               {"II", CementType::type_i_ii},
                                                               {"III", CementType::type_iii}});
constexpr auto ash_classes =
    std::to_array<Word<AshClass>>({{"F", AshClass::f}, {"C", AshClass::c}});
constexpr auto aggregates = std::to_array<Word<Aggregate>>({{"unknown", Aggregate::unknown},
                                                            {"limestone", Aggregate::limestone},
                                                            {"granite", Aggregate::granite},
                                                            {"gravel", Aggregate::gravel},
                                                            {"quartzite", Aggregate::quartzite},
                                                            {"sandstone", Aggregate::sandstone},
                                                            {"basalt", Aggregate::basalt}});

/// The unit that the first of the keys that are given was written in; else the file's.
const Unit& unit_of_first(const TableReader& table, std::initializer_list<std::string_view> keys,
                          const Quantity& kind) {
  for (const std::string_view key : keys) {
    if (const Unit* const unit = table.unit_of(key)) return *unit;
  }
  return kind.usual(table.units());
}

/// What figures come to, which nobody typed.
std::string computed(double si, const Unit& unit) {
  return with_unit(fmt::format("{:.4g}", unit.from_si(si)), unit);
}

/// Reads the fractions of the cementitious material and checks that some cement is left.
void read_fractions(TableReader& table, Mix& mix) {
  set(mix.ash_class, table.word("fly_ash_class", ash_classes));
  set(mix.ash_fraction, table.quantity("fly_ash", fraction_quantity, limits::ash_fractions));
  set(mix.slag_fraction, table.quantity("slag", fraction_quantity, limits::slag_fractions));
  set(mix.silica_fume_fraction,
      table.quantity("silica_fume", fraction_quantity, limits::fume_fractions));
  const double replaced = mix.ash_fraction + mix.slag_fraction + mix.silica_fume_fraction;
  if (replaced > limits::max_replaced) {
    const Unit& unit = unit_of_first(table, {"fly_ash", "slag", "silica_fume"}, fraction_quantity);
    table.error("",
                fmt::format("ash, slag and fume together are {}, expected at most {}",
                            computed(replaced, unit), computed(limits::max_replaced, unit)),
                "each is a share of all cementitious, cement included");
  }
  if (table.has("fly_ash_class") && !table.has("fly_ash")) {
    table.warning("fly_ash_class", "has no effect: the mix has no fly ash",
                  "say how much of the cementitious is ash, such as fly_ash = 20 (percent)");
  }
}

constexpr std::string_view sacks_unit = "sacks of 94 lb a cubic yard";

/// "6 sack" where a weight is asked for: how a mix is ordered, with all its cementitious counted.
bool is_in_sacks(TableReader& table, std::string_view key) {
  const TomlEntry* const found = table.entry(key);
  const auto* const text =
      found == nullptr ? nullptr : std::get_if<std::string>(&found->value.held);
  return text != nullptr && parse_sacks(*text, table.units());
}

/// The cementitious content: given, computed from the Portland cement content, or the usual one.
void read_cementitious(TableReader& table, Mix& mix) {
  auto sacks = table.number("sacks", limits::sacks_yd3, sacks_unit);
  const auto weight = [&](std::string_view key) {
    if (!is_in_sacks(table, key))
      return table.quantity(key, content_quantity, limits::contents_kg_m3);
    sacks = table.number(key, limits::sacks_yd3, sacks_unit);
    return std::optional<double>();
  };
  const auto all = weight("cementitious");
  const auto cement = weight("cement");
  table.refuse_both("cementitious", "cement",
                    "`cement` is the Portland cement alone, `cementitious` all of it with ash, "
                    "slag and fume");
  table.refuse_both("sacks", "cement");
  table.refuse_both("sacks", "cementitious");
  const double replaced = mix.ash_fraction + mix.slag_fraction + mix.silica_fume_fraction;
  mix.cementitious_kg_m3 = usual_cementitious_kg_m3;
  if (cement && replaced <= limits::max_replaced)
    mix.cementitious_kg_m3 = *cement / (1.0 - replaced);
  set(mix.cementitious_kg_m3, all);
  if (sacks) mix.cementitious_kg_m3 = kg_m3_from_lb_yd3(lb_per_sack * *sacks);
  if (limits::contents_kg_m3.holds(mix.cementitious_kg_m3)) return;
  const Unit& unit = unit_of_first(table, {"cement", "cementitious"}, content_quantity);
  table.error(
      "cement",
      fmt::format("makes {} of cementitious with its ash, slag and fume, expected {}",
                  computed(mix.cementitious_kg_m3, unit), shown(limits::contents_kg_m3, unit)),
      "`cement` is the Portland cement alone; the shares are of all cementitious");
}

/// The water that nobody told, by slump or by strength, the less of the two where both are given:
/// the plant must meet both. False if neither is given.
bool take_usual_water(TableReader& table, Mix& mix) {
  constexpr double min_entrained_fraction = 0.04;
  const bool with_air = mix.air_fraction >= min_entrained_fraction;
  if (!mix.slump_m && !table.has("strength")) return false;
  mix.w_cm = std::numeric_limits<double>::infinity();
  if (mix.slump_m) {
    mix.water_source = WaterSource::slump;
    mix.w_cm = usual_water_kg_m3(*mix.slump_m, with_air) / mix.cementitious_kg_m3;
  }
  const double by_strength = usual_w_cm(mix.specified_strength_psi, with_air);
  if (table.has("strength") && by_strength < mix.w_cm) {
    mix.water_source = WaterSource::strength;
    mix.w_cm = by_strength;
  }
  mix.w_cm = std::clamp(mix.w_cm, limits::w_cms.low, limits::w_cms.high);
  return true;
}

void read_w_cm(TableReader& table, Mix& mix) {
  const auto w_cm = table.number("w_cm", limits::w_cms, "");
  const auto water = table.quantity("water", content_quantity, waters_kg_m3);
  mix.slump_m = table.quantity("slump", thickness_quantity, limits::slumps_m);
  table.refuse_both("w_cm", "water");
  set(mix.w_cm, w_cm);
  if (!table.has("w_cm") && !table.has("water") && !take_usual_water(table, mix)) {
    table.error("", "the water is missing",
                "write `w_cm = 0.45` (water over cementitious), or what you order by: `slump` "
                "and `sacks`, or `strength`");
  }
  if (!water) return;
  if (!table.has("cement") && !table.has("cementitious")) {
    table.error("water", "needs the `cement` it goes with", "or write `w_cm` in its place");
    return;
  }
  mix.w_cm = *water / mix.cementitious_kg_m3;
  if (limits::w_cms.holds(mix.w_cm)) return;
  table.error("water",
              fmt::format("makes a w/cm of {:.3g}, expected {}", mix.w_cm, shown(limits::w_cms)),
              "`water` is all the mix water; `cement` and `water` are for the same volume");
}

IngredientTemperatures read_ingredients(TableReader& table, const Mix& mix) {
  IngredientTemperatures parts;
  const auto temperature = [&](std::string_view key, const Range& range) {
    return table.quantity(key, temperature_quantity, range, Presence::required);
  };
  set(parts.cement_c, temperature("cement_temperature", limits::cements_c));
  set(parts.aggregate_c, temperature("aggregate_temperature", limits::ingredients_c));
  set(parts.water_c, temperature("water_temperature", limits::waters_c));
  set(parts.aggregate_kg_m3,
      table.quantity("aggregate", content_quantity, limits::aggregates_kg_m3, Presence::required));
  set(parts.aggregate_moisture_kg_m3,
      table.quantity("aggregate_moisture", content_quantity, limits::moistures_kg_m3));
  set(parts.ice_kg_m3, table.quantity("ice", content_quantity, limits::moistures_kg_m3));
  const double water_kg_m3 = mix.w_cm * mix.cementitious_kg_m3;
  if (parts.ice_kg_m3 + parts.aggregate_moisture_kg_m3 > water_kg_m3) {
    table.error("", "ice and the aggregate's moisture are more than the mix water",
                "both are parts of it");
  }
  return parts;
}

void read_temperature(TableReader& table, Mix& mix) {
  const auto measured =
      table.quantity("concrete_temperature", temperature_quantity, limits::discharges_c);
  set(mix.temperature, measured);
  const bool from_parts = table.in_table("ingredients", [&](TableReader& ingredients) {
    mix.temperature = read_ingredients(ingredients, mix);
  });
  table.refuse_both("concrete_temperature", "ingredients");
  mix.temperature_is_assumed = !from_parts && !table.has("concrete_temperature");
}

void read_supplier_set(TableReader& table, Mix& mix) {
  mix.supplier_initial_set_h =
      table.quantity("initial_set", hours_quantity, limits::initial_sets_h);
  mix.supplier_final_set_h = table.quantity("final_set", hours_quantity, limits::final_sets_h);
  if (table.has("initial_set") != table.has("final_set")) {
    const auto* const given = table.has("initial_set") ? "initial_set" : "final_set";
    table.error(given, "stands alone: it takes both set times, initial and final",
                "ask the supplier for the other (ASTM C403 at 73 °F), or leave both out to have "
                "them estimated");
  }
  if (!mix.supplier_initial_set_h || !mix.supplier_final_set_h) return;
  if (*mix.supplier_initial_set_h >= *mix.supplier_final_set_h) {
    table.error("initial_set", "is not before the final set", "", table.where("final_set"));
    return;
  }
  const double times = *mix.supplier_final_set_h / *mix.supplier_initial_set_h;
  if (final_over_initial.holds(times)) return;
  table.warning("final_set",
                fmt::format("is {:.3g} times the initial set; mixes have {:g} to {:g} times", times,
                            final_over_initial.low, final_over_initial.high),
                "check both with the supplier (ASTM C403 at 73 °F, hours)");
}

}  // namespace

Mix read_mix(TableReader& table) {
  Mix mix;
  set(mix.name, table.text("name"));
  read_fractions(table, mix);
  read_cementitious(table, mix);
  set(mix.air_fraction, table.quantity("air", fraction_quantity, limits::air_fractions));
  set(mix.specified_strength_psi,
      table.quantity("strength", strength_quantity, limits::strengths_psi));
  read_w_cm(table, mix);
  set(mix.cement, table.word("cement_type", cement_types));
  mix.strength_margin_psi =
      table.quantity("strength_margin", strength_margin_quantity, limits::strength_margins_psi);
  set(mix.aggregate, table.word("aggregate", aggregates));
  read_temperature(table, mix);
  read_supplier_set(table, mix);
  mix.admixtures = read_admixtures(table);
  return mix;
}

}  // namespace slabtide
