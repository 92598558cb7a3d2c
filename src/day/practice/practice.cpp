#include "slabtide/day/practice/practice.h"

#include <map>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "core/text.h"
#include "job/model/limits.h"
#include "job/toml/toml_tree.h"
#include "practice_entries.h"
#include "slab/process/setting.h"
#include "slabtide/core/embedded.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr TomlKind practice_toml{"practice file",
                                 "practice.toml, installed with the program, is one"};
/// After this many faults the file is probably not a practice file at all.
constexpr std::size_t max_faults = 50;

constexpr double max_psi = 20000.0;
constexpr double max_strength_psi = 10000.0;
constexpr double max_minutes = 24.0 * 60.0;

std::string_view rate_unit(WorkMeasure measure) {
  if (measure == WorkMeasure::length) return "m_h";
  return measure == WorkMeasure::job ? "jobs_h" : "m2_h";
}

void add_windows(PracticeEntries& entries, Practice& practice) {
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Operation::tooled_joint); ++i) {
    const auto operation = static_cast<Operation>(i);
    const std::string table = fmt::format("operation.{}.", operation_id(operation));
    ResistanceWindow& window = practice.window(operation);
    entries.number(table + "opens_psi", window.opens_psi, 0.1, max_psi);
    entries.number(table + "closes_psi", window.closes_psi, 0.1, max_psi);
    entries.in_order();
    entries.flag(table + "needs_sheen_gone", window.needs_sheen_gone);
    if (operation == Operation::broom) {
      entries.flag(table + "leaves_top_open", window.leaves_top_open);
    }
  }
}

void add_surface_rules(PracticeEntries& entries, Practice& p) {
  entries.number("cells.first_share", p.cells.first_fraction, 0.001, 0.5);
  entries.number("cells.all_over_share", p.cells.all_over_fraction, 0.5, 1.0);
  entries.number("cells.part_differs_min", p.cells.part_differs_min, 1.0, max_minutes);
  entries.number("sheen.film_gone_kg_m2", p.sheen.bleed_water_gone_kg_m2, 0.001, 1.0);
  entries.number("sheen.grace_min", p.sheen.grace_min, 0.0, max_minutes);
  entries.number("sheen.early_bleed_share", p.sheen.early_bleed_fraction, 0.0, 1.0);
  entries.number("sheen.early_evaporation_kg_m2_h", p.sheen.early_evaporation_kg_m2_h, 0.0, 10.0);
  entries.number("evaporation.caution_kg_m2_h", p.evaporation.caution_kg_m2_h, 0.01, 10.0);
  entries.number("evaporation.precautions_kg_m2_h", p.evaporation.precautions_kg_m2_h, 0.01, 10.0);
  entries.in_order();
  entries.number("evaporation.hardly_bleeds_factor", p.evaporation.hardly_bleeds_factor, 0.01, 1.0);
  entries.number("crust.ratio", p.crust.ratio, 1.0, 100.0);
  entries.number("crust.body_under_psi", p.crust.body_under_psi, 0.1, max_psi);
  entries.number("crust.top_over_psi", p.crust.top_over_psi, 0.1, max_psi);
  entries.number("absorptance.grey", p.absorptance.grey, 0.0, 1.0);
  entries.number("absorptance.white", p.absorptance.white, 0.0, 1.0);
  entries.number("absorptance.red_or_tan", p.absorptance.red_or_tan, 0.0, 1.0);
  entries.number("absorptance.brown_or_charcoal", p.absorptance.brown_or_charcoal, 0.0, 1.0);
  entries.number("absorptance.form", p.absorptance.form, 0.0, 1.0);
}

void add_joint_rules(PracticeEntries& entries, JointSpacing& joints) {
  entries.number("joints.shrinks_most_thicknesses", joints.shrinks_max_thicknesses, 5.0, 100.0);
  entries.number("joints.usual_thicknesses", joints.usual_thicknesses, 5.0, 100.0);
  entries.number("joints.shrinks_least_thicknesses", joints.shrinks_min_thicknesses, 5.0, 100.0);
  entries.number("joints.most_m", joints.max_m, 0.3, 30.0);
  entries.number("joints.most_aspect", joints.max_aspect, 1.0, 10.0);
  entries.number("joints.walk_aspect", joints.walkway_aspect, 1.0, 10.0);
}

void add_day_rules(PracticeEntries& entries, Practice& p) {
  entries.number("set.walk_strength_psi", p.set.foot_traffic_strength_psi, 1.0, max_strength_psi);
  entries.number("set.wash_after_set_age_h", p.set.wash_after_set_age_h, 1.0, 1000.0);
  entries.number("set.wash_after_h", p.set.wash_after_h, 0.0, 1000.0);
  entries.number("set.wash_off_after_h", p.set.wash_off_after_h, 0.0, 1000.0);
  entries.number("set.wash_off_before_h", p.set.wash_off_before_h, 0.0, 1000.0);
  entries.number("set.dry_after_wash_h", p.set.dry_after_wash_h, 0.0, 1000.0);
  entries.number("set.seal_after_days", p.set.seal_after_days, 0.0, 365.0);
  entries.number("set.seal_over_dew_point_k", p.set.seal_over_dew_point_k, 0.0, 20.0);
  entries.number("set.seal_surface_min_c", p.set.seal_surface_min_c, -10.0, 60.0);
  entries.number("set.seal_surface_max_c", p.set.seal_surface_max_c, -10.0, 60.0);
  entries.in_order();
  entries.number("saw.early_entry_opens_psi", p.saw.early_entry_opens_psi, 1.0, max_strength_psi);
  entries.number("saw.wet_opens_soft_psi", p.saw.wet_opens_soft_psi, 1.0, max_strength_psi);
  entries.number("saw.wet_opens_medium_psi", p.saw.wet_opens_medium_psi, 1.0, max_strength_psi);
  entries.number("saw.wet_opens_hard_psi", p.saw.wet_opens_hard_psi, 1.0, max_strength_psi);
  entries.number("saw.wet_opens_quartzite_psi", p.saw.wet_opens_quartzite_psi, 1.0,
                 max_strength_psi);
  entries.number("saw.cut_by_ratio", p.saw.cut_by_ratio, 0.01, 1.0);
  entries.number("saw.late_ratio", p.saw.late_ratio, 0.01, 2.0);
  entries.in_order();
  entries.number("saw.surface_fall_k", p.saw.surface_fall_k, 0.1, 60.0);
  entries.number("saw.wet_depth_share", p.saw.wet_depth_fraction, 0.05, 1.0);
  entries.number("saw.wet_least_depth_m", p.saw.wet_min_depth_m, 0.001, 0.5);
  entries.number("saw.early_entry_depth_m", p.saw.early_entry_depth_m, 0.001, 0.5);
  entries.number("saw.speed_m_h", p.saw.speed_m_h, 1.0, 1000.0);
  entries.number("saw.set_up_min", p.saw.set_up_min, 0.0, 120.0);
  add_joint_rules(entries, p.joints);
  entries.number("placing.chute_worker_h_per_m3", p.placing.chute_worker_h_per_m3, 0.01, 20.0);
  entries.number("placing.buggy_added_worker_h_per_m3", p.placing.buggy_added_worker_h_per_m3, 0.0,
                 20.0);
  entries.number("placing.wheelbarrow_added_worker_h_per_m3",
                 p.placing.wheelbarrow_added_worker_h_per_m3, 0.0, 20.0);
  entries.number("placing.pump_worker_h_per_m3", p.placing.pump_worker_h_per_m3, 0.01, 20.0);
  entries.number("placing.base_haul_m", p.placing.base_haul_m, 1.0, 500.0);
  entries.number("limits.hot_concrete_c", p.limits.hot_concrete_c, 0.0, 60.0);
  entries.number("limits.hot_air_c", p.limits.hot_air_c, 0.0, 60.0);
  entries.number("limits.cold_air_c", p.limits.cold_air_c, -30.0, 30.0);
  entries.number("limits.cold_concrete_c", p.limits.cold_concrete_c, -30.0, 30.0);
  entries.number("limits.protect_until_psi", p.limits.protect_until_psi, 1.0, max_strength_psi);
  entries.number("limits.rain_mm_h", p.limits.rain_mm_h, 0.0, 100.0);
  entries.number("limits.rain_chance", p.limits.rain_chance, 0.0, 1.0);
  entries.number("limits.dry_humidity_share", p.limits.dry_humidity_fraction, 0.0, 1.0);
  entries.number("limits.crust_wind_m_s", p.limits.crust_wind_m_s, 0.0, 50.0);
  entries.number("limits.forecast_old_h", p.limits.forecast_old_h, 0.0, 1000.0);
  entries.number("limits.short_window_min", p.limits.short_window_min, 0.0, max_minutes);
}

void add_shelter_rules(PracticeEntries& entries, ShelterRules& p) {
  entries.number("shelter.shade_most_m2", p.shade_max_m2, 0.0, 10000.0);
  entries.number("shelter.shade_most_wind_m_s", p.shade_max_wind_m_s, 0.0, 50.0);
  entries.number("shelter.shade_least_air_c", p.shade_min_air_c, -30.0, 60.0);
  entries.number("shelter.windbreak_least_wind_m_s", p.windbreak_min_wind_m_s, 0.0, 50.0);
}

void add_compare_rules(PracticeEntries& entries, CompareRules& p) {
  constexpr double max_retarder = limits::retarder_doses_ml_100kg.high;
  entries.number("compare.retarder_low_ml_100kg", p.retarder_low_ml_100kg, 1.0, max_retarder);
  entries.number("compare.retarder_high_ml_100kg", p.retarder_high_ml_100kg, 1.0, max_retarder);
  entries.in_order();
  entries.number("compare.accelerator_ml_100kg", p.accelerator_ml_100kg, 1.0,
                 limits::accelerator_doses_ml_100kg.high);
  entries.number("compare.earliest_start_h", p.earliest_start_h, 0.0, hours_per_day);
  entries.number("compare.latest_start_h", p.latest_start_h, 0.0, hours_per_day);
  entries.in_order();
  entries.number("compare.sunny_share", p.sunny_fraction, 0.01, 1.0);
  entries.number("compare.windbreak_factor", p.windbreak_factor, 0.05, 1.0);
  entries.number("compare.cooler_k", p.cooler_k, 0.5, 10.0);
  entries.number("compare.warmer_k", p.warmer_k, 0.5, 15.0);
  entries.number("compare.min_load_m3", p.min_load_m3, 0.1, 10.0);
  entries.number("compare.next_truck_min", p.next_truck_min, 1.0, max_minutes);
  entries.number("compare.own_truck_min", p.own_truck_min, 1.0, max_minutes);
  entries.number("compare.blanket_m2k_w", p.blanket_m2k_w, 0.1, 7.0);
  entries.number("compare.worth_min", p.worth_min, 1.0, max_minutes);
  entries.number("compare.dark_late_share", p.dark_late_fraction, 0.0, 1.0);
  entries.number("compare.search_k", p.search_k, 1.0, 30.0);
}

void add_days_rules(PracticeEntries& entries, DaysRules& p) {
  entries.number("days.call_off_h", p.call_off_h, 0.0, 3.0 * hours_per_day);
  entries.number("days.reach_h", p.reach_h, 1.0, 2.0 * hours_per_day);
  entries.count("days.more_finishers", p.more_finishers, 0.0, 12.0);
}

void add_work_rules(PracticeEntries& entries, CrewPractice& p) {
  constexpr double max_hands = 50.0;
  constexpr double max_rate_h = 10000.0;
  for (std::size_t i = 0; i < task_kind_count; ++i) {
    const auto kind = static_cast<TaskKind>(i);
    const std::string id(task_kind_id(kind));
    WorkRule& rule = p.rule(kind);
    // The speed of sawing is given with the saw.
    if (kind != TaskKind::saw) {
      const std::string_view unit = rate_unit(work_measure(kind));
      entries.number(fmt::format("rates.{}_{}", id, unit), rule.rate_per_person_h, 0.1, max_rate_h);
    }
    entries.count(fmt::format("hands.{}_least", id), rule.min_hands, 1.0, max_hands);
    entries.count(fmt::format("hands.{}_most", id), rule.max_hands, 1.0, max_hands);
    entries.in_order(true);
  }
}

void add_crew_rules(PracticeEntries& entries, CrewPractice& p) {
  constexpr double last_hour = 23.99;
  entries.number("hours.bull_float_within_min", p.hours.bull_float_within_min, 1.0, max_minutes);
  entries.number("hours.idle_told_min", p.hours.idle_told_min, 1.0, max_minutes);
  entries.number("hours.go_home_min", p.hours.go_home_min, 1.0, max_minutes);
  entries.number("hours.next_day_from_h", p.hours.next_day_from_h, 0.0, last_hour);
  entries.number("hours.next_day_until_h", p.hours.next_day_until_h, 0.0, last_hour);
  entries.in_order();
  entries.number("pieces.area_m2", p.pieces.area_m2, 1.0, 10000.0);
  entries.count("pieces.most", p.pieces.max, 1.0, 50.0);
  entries.number("touch.full_from_opens_factor", p.touch.full_from_opens_factor, 1.0, 100.0);
  entries.number("touch.last_call_from_close_factor", p.touch.last_call_from_close_factor, 0.01,
                 1.0);
  entries.number("coverage.release_powder_kg_m2", p.coverage.release_powder_kg_m2, 0.001, 10.0);
  entries.number("coverage.release_liquid_l_m2", p.coverage.release_liquid_l_m2, 0.001, 10.0);
  entries.number("coverage.surface_retarder_l_m2", p.coverage.surface_retarder_l_m2, 0.001, 10.0);
  entries.number("coverage.salt_kg_m2", p.coverage.salt_kg_m2, 0.001, 10.0);
  entries.number("coverage.curing_compound_l_m2", p.coverage.curing_compound_l_m2, 0.001, 10.0);
  entries.number("coverage.sealer_l_m2", p.coverage.sealer_l_m2, 0.001, 10.0);
  entries.number("coverage.sealer_coats", p.coverage.sealer_coats, 1.0, 10.0);
  entries.number("coverage.cover_factor", p.coverage.cover_factor, 1.0, 3.0);
}

void add_spread_rules(PracticeEntries& entries, SpreadRules& p) {
  const auto number = [&entries](const char* key, double& to, double min, double max) {
    entries.number(fmt::format("spread.{}", key), to, min, max);
  };
  number("air_k", p.air_k, 0.0, 10.0);
  number("dew_point_k", p.dew_point_k, 0.0, 10.0);
  number("wind_share", p.wind_fraction, 0.0, 2.0);
  number("cloud_share", p.cloud_fraction, 0.0, 1.0);
  number("forecast_doubles_in_h", p.forecast_doubles_in_h, 1.0, 1000.0);
  number("unknown_age_h", p.unknown_age_h, 0.0, 240.0);
  number("concrete_k", p.concrete_k, 0.0, 10.0);
  number("convection_share", p.convection_fraction, 0.0, 2.0);
  number("evaporation_share", p.evaporation_fraction, 0.0, 2.0);
  number("absorptance", p.absorptance, 0.0, 0.5);
  number("set_supplier_share", p.set_supplier_fraction, 0.0, 1.0);
  number("set_estimated_share", p.set_estimated_fraction, 0.0, 1.0);
  number("set_span_share", p.set_span_fraction, 0.0, 1.0);
  number("set_energy_share", p.activation_energy_fraction, 0.0, 1.0);
  number("admixture_share", p.admixture_fraction, 0.0, 2.0);
  number("bleed_share", p.bleed_fraction, 0.0, 2.0);
  number("late_min", p.late_min, 0.0, 240.0);
  number("early_min", p.early_min, 0.0, 240.0);
  number("pace_share", p.pace_fraction, 0.0, 1.0);
  number("night_air_k", p.night_air_k, 0.0, 10.0);
  number("wind_ratio_share", p.wind_ratio_fraction, 0.0, 2.0);
  number("strength_share", p.strength_fraction, 0.0, 1.0);
  number("strength_margin_psi", p.strength_margin_psi, 0.0, 3000.0);
  number("saw_strength_share", p.saw_strength_fraction, 0.0, 2.0);
  number("aggregate_saw_share", p.aggregate_saw_fraction, 0.0, 2.0);
  number("aggregate_expansion_share", p.aggregate_expansion_fraction, 0.0, 1.0);
  number("stress_share", p.stress_fraction, 0.0, 2.0);
  number("ready_share", p.ready_fraction, 0.0, 2.0);
  number("too_stiff_share", p.too_stiff_fraction, 0.0, 2.0);
  number("base_k", p.base_k, 0.0, 20.0);
  number("bleed_time_share", p.bleed_time_fraction, 0.0, 2.0);
  number("base_measured_k", p.base_measured_k, 0.0, 20.0);
}

void add_observation_rules(PracticeEntries& entries, ObservationRules& p) {
  const auto number = [&entries](const char* key, double& to, double max) {
    constexpr double min = 0.001;  // nothing measured on site is exact
    entries.number(fmt::format("reading.{}", key), to, min, max);
  };
  number("placed_min", p.placed_min, 240.0);
  number("sheen_gone_min", p.sheen_gone_min, 240.0);
  number("edge_held_min", p.edge_held_min, 240.0);
  number("thumbprint_min", p.thumbprint_min, 240.0);
  number("print_firm_min", p.print_firm_min, 240.0);
  number("initial_set_min", p.initial_set_min, 240.0);
  number("sawed_min", p.sawed_min, 240.0);
  number("model_min", p.model_min, 240.0);
  number("concrete_k", p.concrete_k, 10.0);
  number("surface_k", p.surface_k, 20.0);
  number("air_k", p.air_k, 10.0);
  number("wind_share", p.wind_fraction, 3.0);
  number("humidity", p.humidity, 0.5);
  number("shared_share", p.shared_fraction, 0.999);
  number("unbelievable_z", p.unbelievable_z, 10.0);
}

PracticeEntries entries_of(Practice& practice) {
  PracticeEntries entries;
  add_windows(entries, practice);
  add_surface_rules(entries, practice);
  add_day_rules(entries, practice);
  add_shelter_rules(entries, practice.shelter);
  add_compare_rules(entries, practice.compare);
  add_days_rules(entries, practice.days);
  add_work_rules(entries, practice.crew);
  add_crew_rules(entries, practice.crew);
  add_spread_rules(entries, practice.spread);
  add_observation_rules(entries, practice.reading);
  return entries;
}

Diagnostic error_at(const std::string& key, SourcePosition where, std::string message,
                    std::string next_step = {}) {
  return {Severity::error, key, std::move(message), where, std::nullopt, std::move(next_step)};
}

Diagnostic unknown_key(const std::string& path, SourcePosition where,
                       const PracticeEntries& entries) {
  std::vector<std::string_view> known;
  for (const PracticeEntry& entry : entries.list) known.push_back(entry.path);
  const auto meant = nearest(path, known);
  return error_at(path, where, "unknown entry",
                  meant ? fmt::format("did you mean {}?", *meant)
                        : std::string("the entries are listed in practice.toml"));
}

/// Once an entry, though the set times of a mix mean it so already.
Diagnostic fixed_by_definition(const std::string& path, SourcePosition where) {
  Diagnostic warning = error_at(
      path, where,
      fmt::format("initial set is {} psi and final set {} by definition (ASTM C403): not read",
                  initial_set_psi, final_set_psi),
      "take the line out");
  warning.severity = Severity::warning;
  return warning;
}

/// Reads the values below `table`, recording which entries occurred.
class PracticeReader {
 public:
  explicit PracticeReader(Practice& practice) : entries_(entries_of(practice)) {}

  void read(const TomlTable& table, const std::string& prefix) {
    for (const TomlEntry& entry : table.entries) {
      if (diagnostics.size() >= max_faults) return;
      const std::string path = prefix + entry.key;
      if (const auto* const below = std::get_if<TomlTable>(&entry.value.held)) {
        read(*below, path + ".");
      } else {
        read_leaf(path, entry);
      }
    }
  }

  std::vector<Diagnostic> diagnostics;
  std::size_t met = 0;
  std::size_t all() const { return entries_.list.size(); }
  const PracticeEntries& entries() const { return entries_; }
  /// The position of the entry, if it is in the text.
  std::optional<SourcePosition> place_of(const std::string& path) const {
    const auto found = places_.find(path);
    if (found == places_.end()) return std::nullopt;
    return found->second;
  }

 private:
  void read_leaf(const std::string& path, const TomlEntry& leaf) {
    const PracticeEntry* const found = entries_.find(path);
    if (path == "set.initial_set_psi" || path == "set.final_set_psi") {
      diagnostics.push_back(fixed_by_definition(path, leaf.where));
      return;
    }
    if (found == nullptr) {
      diagnostics.push_back(unknown_key(path, leaf.where, entries_));
      return;
    }
    ++met;
    places_.emplace(path, leaf.value.where);
    if (found->is_flag()) {
      read_flag(*found, leaf.value);
    } else {
      read_number(*found, leaf.value);
    }
  }

  void refuse(const PracticeEntry& entry, const TomlValue& value, std::string_view expected) {
    diagnostics.push_back(error_at(entry.path, value.where,
                                   fmt::format("got {}, expected {}", shown(value), expected)));
  }

  void read_flag(const PracticeEntry& entry, const TomlValue& value) {
    if (const auto* const yes = std::get_if<bool>(&value.held)) {
      *std::get<bool*>(entry.to) = *yes;
    } else {
      refuse(entry, value, "true or false");
    }
  }

  void read_number(const PracticeEntry& entry, const TomlValue& value) {
    const auto* const number = std::get_if<double>(&value.held);
    if (number == nullptr || !entry.holds(*number)) {
      refuse(entry, value, entry.expected());
    } else if (entry.is_count()) {
      *std::get<int*>(entry.to) = static_cast<int>(*number);
    } else {
      *std::get<double*>(entry.to) = *number;
    }
  }

  PracticeEntries entries_;
  std::map<std::string, SourcePosition> places_;
};

void check_order(PracticeReader& reader) {
  for (const OrderedEntries& pair : reader.entries().pairs) {
    std::string words = reader.entries().order_fault(pair);
    if (words.empty()) continue;
    Diagnostic fault = error_at(pair.lower, {}, std::move(words));
    fault.where = reader.place_of(pair.lower);
    const auto upper = reader.place_of(pair.upper);
    (fault.where ? fault.also_where : fault.where) = upper;
    reader.diagnostics.push_back(std::move(fault));
  }
}

Parsed<Practice> read_into(std::string_view toml, const Practice& base, bool whole) {
  Parsed<Practice> reading;
  Practice practice = base;
  PracticeReader reader(practice);
  auto tree = read_toml(toml, practice_toml);
  if (!tree.ok()) return {std::nullopt, std::move(tree.diagnostics)};
  reader.read(*tree.value, {});
  if (!has_error(reader.diagnostics)) check_order(reader);
  reading.diagnostics = std::move(reader.diagnostics);
  if (whole && reader.met != reader.all()) {
    reading.diagnostics.push_back({Severity::error,
                                   {},
                                   fmt::format("{} of {} entries", reader.met, reader.all()),
                                   std::nullopt,
                                   std::nullopt,
                                   {}});
  }
  if (!has_error(reading.diagnostics)) reading.value = practice;
  return reading;
}

}  // namespace

Practice with_labels(Practice practice, const FinishWork& work) {
  practice.set.wash_after_h = work.wash_after_h.value_or(practice.set.wash_after_h);
  practice.set.wash_off_after_h = work.wash_off_after_h.value_or(practice.set.wash_off_after_h);
  practice.set.wash_off_before_h = work.wash_off_before_h.value_or(practice.set.wash_off_before_h);
  practice.set.seal_after_days = work.seal_after_days.value_or(practice.set.seal_after_days);
  return practice;
}

void validate(const Practice& practice) {
  Practice checked = practice;  // a copy, because the entries point to values they may change
  const PracticeEntries entries = entries_of(checked);
  for (const PracticeEntry& entry : entries.list) {
    if (entry.is_flag() || entry.holds(entry.number())) continue;
    throw std::invalid_argument(
        fmt::format("{}: got {}, expected {}", entry.path, entry.number(), entry.expected()));
  }
  for (const OrderedEntries& pair : entries.pairs) {
    const std::string fault = entries.order_fault(pair);
    if (!fault.empty()) throw std::invalid_argument(fmt::format("{}: {}", pair.lower, fault));
  }
}

Practice default_practice() {
  Parsed<Practice> reading = read_into(embedded::practice_toml(), Practice{}, true);
  if (!reading.ok()) {
    throw std::logic_error(
        render_all(reading.diagnostics, "practice.toml", embedded::practice_toml()));
  }
  return *reading.value;
}

Parsed<Practice> read_practice(std::string_view toml, const Practice& base) {
  return read_into(toml, base, false);
}

}  // namespace slabtide
