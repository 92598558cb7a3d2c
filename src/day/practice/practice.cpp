#include "slabtide/day/practice/practice.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "slabtide/core/embedded.h"
#include "slabtide/core/text.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/limits.h"
#include "slabtide/job/toml/toml_tree.h"

namespace slabtide {

namespace {

/// One entry of the file and where it goes.
struct Entry {
  std::string path;
  double* number = nullptr;
  bool* flag = nullptr;
  double min = 0.0;
  double max = 0.0;
  int* count = nullptr;  ///< in place of `number` for what comes in whole numbers

  bool holds(double value) const { return value >= min && value <= max; }
  std::string expected() const {
    return fmt::format("{} from {} to {}", count != nullptr ? "a whole number" : "a number", min,
                       max);
  }
};

constexpr TomlKind practice_toml{"practice file",
                                 "practice.toml, installed with the program, is one"};
/// After so many the file is not what it was taken for.
constexpr std::size_t max_faults = 50;

constexpr double max_psi = 20000.0;
constexpr double max_strength_psi = 10000.0;
constexpr double max_minutes = 24.0 * 60.0;

std::string_view rate_unit(WorkMeasure measure) {
  switch (measure) {
    case WorkMeasure::area:
      return "m2_h";
    case WorkMeasure::length:
      return "m_h";
    case WorkMeasure::job:
      return "jobs_h";
  }
  return "m2_h";
}

void add_windows(std::vector<Entry>& entries, Practice& practice) {
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Operation::tooled_joint); ++i) {
    const auto operation = static_cast<Operation>(i);
    const std::string table = fmt::format("operation.{}.", operation_id(operation));
    ResistanceWindow& window = practice.window(operation);
    entries.push_back({table + "opens_psi", &window.opens_psi, nullptr, 0.1, max_psi});
    entries.push_back({table + "closes_psi", &window.closes_psi, nullptr, 0.1, max_psi});
    entries.push_back({table + "needs_sheen_gone", nullptr, &window.needs_sheen_gone, 0, 0});
  }
}

void add_surface_rules(std::vector<Entry>& entries, Practice& p) {
  const auto number = [&entries](std::string path, double& to, double min, double max) {
    entries.push_back({std::move(path), &to, nullptr, min, max});
  };
  number("cells.first_share", p.cells.first_fraction, 0.001, 0.5);
  number("cells.all_over_share", p.cells.all_over_fraction, 0.5, 1.0);
  number("cells.part_differs_min", p.cells.part_differs_min, 1.0, max_minutes);
  number("sheen.film_gone_kg_m2", p.sheen.bleed_water_gone_kg_m2, 0.001, 1.0);
  number("sheen.grace_min", p.sheen.grace_min, 0.0, max_minutes);
  number("sheen.early_bleed_share", p.sheen.early_bleed_fraction, 0.0, 1.0);
  number("sheen.early_evaporation_kg_m2_h", p.sheen.early_evaporation_kg_m2_h, 0.0, 10.0);
  number("evaporation.caution_kg_m2_h", p.evaporation.caution_kg_m2_h, 0.01, 10.0);
  number("evaporation.precautions_kg_m2_h", p.evaporation.precautions_kg_m2_h, 0.01, 10.0);
  number("evaporation.hardly_bleeds_factor", p.evaporation.hardly_bleeds_factor, 0.01, 1.0);
  number("crust.ratio", p.crust.ratio, 1.0, 100.0);
  number("crust.body_under_psi", p.crust.body_under_psi, 0.1, max_psi);
  number("crust.top_over_psi", p.crust.top_over_psi, 0.1, max_psi);
  number("absorptance.grey", p.absorptance.grey, 0.0, 1.0);
  number("absorptance.white", p.absorptance.white, 0.0, 1.0);
  number("absorptance.red_or_tan", p.absorptance.red_or_tan, 0.0, 1.0);
  number("absorptance.brown_or_charcoal", p.absorptance.brown_or_charcoal, 0.0, 1.0);
  number("absorptance.form", p.absorptance.form, 0.0, 1.0);
}

template <class Number>
void add_joint_rules(const Number& number, JointSpacing& joints) {
  number("joints.shrinks_most_thicknesses", joints.shrinks_max_thicknesses, 5.0, 100.0);
  number("joints.usual_thicknesses", joints.usual_thicknesses, 5.0, 100.0);
  number("joints.shrinks_least_thicknesses", joints.shrinks_min_thicknesses, 5.0, 100.0);
  number("joints.most_m", joints.max_m, 0.3, 30.0);
  number("joints.most_aspect", joints.max_aspect, 1.0, 10.0);
  number("joints.walk_aspect", joints.walkway_aspect, 1.0, 10.0);
}

void add_day_rules(std::vector<Entry>& entries, Practice& p) {
  const auto number = [&entries](std::string path, double& to, double min, double max) {
    entries.push_back({std::move(path), &to, nullptr, min, max});
  };
  number("set.initial_set_psi", p.set.initial_set_psi, 1.0, max_psi);
  number("set.final_set_psi", p.set.final_set_psi, 1.0, max_psi);
  number("set.walk_strength_psi", p.set.foot_traffic_strength_psi, 1.0, max_strength_psi);
  number("set.wash_after_set_age_h", p.set.wash_after_set_age_h, 1.0, 1000.0);
  number("set.dry_after_wash_h", p.set.dry_after_wash_h, 0.0, 1000.0);
  number("set.seal_surface_min_c", p.set.seal_surface_min_c, -10.0, 60.0);
  number("set.seal_surface_max_c", p.set.seal_surface_max_c, -10.0, 60.0);
  number("saw.early_entry_opens_psi", p.saw.early_entry_opens_psi, 1.0, max_strength_psi);
  number("saw.wet_opens_soft_psi", p.saw.wet_opens_soft_psi, 1.0, max_strength_psi);
  number("saw.wet_opens_medium_psi", p.saw.wet_opens_medium_psi, 1.0, max_strength_psi);
  number("saw.wet_opens_hard_psi", p.saw.wet_opens_hard_psi, 1.0, max_strength_psi);
  number("saw.cut_by_ratio", p.saw.cut_by_ratio, 0.01, 1.0);
  number("saw.late_ratio", p.saw.late_ratio, 0.01, 2.0);
  number("saw.surface_fall_k", p.saw.surface_fall_k, 0.1, 60.0);
  number("saw.wet_depth_share", p.saw.wet_depth_fraction, 0.05, 1.0);
  number("saw.wet_least_depth_m", p.saw.wet_min_depth_m, 0.001, 0.5);
  number("saw.early_entry_depth_m", p.saw.early_entry_depth_m, 0.001, 0.5);
  number("saw.speed_m_h", p.saw.speed_m_h, 1.0, 1000.0);
  number("saw.set_up_min", p.saw.set_up_min, 0.0, 120.0);
  add_joint_rules(number, p.joints);
  number("placing.chute_worker_h_per_m3", p.placing.chute_worker_h_per_m3, 0.01, 20.0);
  number("placing.buggy_added_worker_h_per_m3", p.placing.buggy_added_worker_h_per_m3, 0.0, 20.0);
  number("placing.wheelbarrow_added_worker_h_per_m3", p.placing.wheelbarrow_added_worker_h_per_m3,
         0.0, 20.0);
  number("placing.base_haul_m", p.placing.base_haul_m, 1.0, 500.0);
  number("limits.hot_concrete_c", p.limits.hot_concrete_c, 0.0, 60.0);
  number("limits.hot_air_c", p.limits.hot_air_c, 0.0, 60.0);
  number("limits.cold_air_c", p.limits.cold_air_c, -30.0, 30.0);
  number("limits.cold_concrete_c", p.limits.cold_concrete_c, -30.0, 30.0);
  number("limits.protect_until_psi", p.limits.protect_until_psi, 1.0, max_strength_psi);
  number("limits.rain_mm_h", p.limits.rain_mm_h, 0.0, 100.0);
  number("limits.rain_chance", p.limits.rain_chance, 0.0, 1.0);
  number("limits.dry_humidity_share", p.limits.dry_humidity_fraction, 0.0, 1.0);
  number("limits.crust_wind_m_s", p.limits.crust_wind_m_s, 0.0, 50.0);
  number("limits.forecast_old_h", p.limits.forecast_old_h, 0.0, 1000.0);
  number("limits.short_window_min", p.limits.short_window_min, 0.0, max_minutes);
}

void add_compare_rules(std::vector<Entry>& entries, CompareRules& p) {
  const auto number = [&entries](std::string path, double& to, double min, double max) {
    entries.push_back({std::move(path), &to, nullptr, min, max});
  };
  constexpr double max_retarder = limits::retarder_doses_ml_100kg.high;
  number("compare.retarder_low_ml_100kg", p.retarder_low_ml_100kg, 1.0, max_retarder);
  number("compare.retarder_high_ml_100kg", p.retarder_high_ml_100kg, 1.0, max_retarder);
  number("compare.accelerator_ml_100kg", p.accelerator_ml_100kg, 1.0,
         limits::accelerator_doses_ml_100kg.high);
  number("compare.earliest_start_h", p.earliest_start_h, 0.0, hours_per_day);
  number("compare.latest_start_h", p.latest_start_h, 0.0, hours_per_day);
  number("compare.sunny_share", p.sunny_fraction, 0.01, 1.0);
  number("compare.windbreak_factor", p.windbreak_factor, 0.05, 1.0);
  number("compare.worth_min", p.worth_min, 1.0, max_minutes);
  number("compare.search_k", p.search_k, 1.0, 30.0);
}

void add_work_rules(std::vector<Entry>& entries, CrewPractice& p) {
  constexpr double max_hands = 50.0;
  constexpr double max_rate_h = 10000.0;
  for (std::size_t i = 0; i < task_kind_count; ++i) {
    const auto kind = static_cast<TaskKind>(i);
    const std::string id(task_kind_id(kind));
    WorkRule& rule = p.rule(kind);
    // The saw's speed stands with the saw.
    if (kind != TaskKind::saw) {
      const std::string_view unit = rate_unit(work_measure(kind));
      entries.push_back({fmt::format("rates.{}_{}", id, unit), &rule.rate_per_person_h, nullptr,
                         0.1, max_rate_h});
    }
    entries.push_back(
        {fmt::format("hands.{}_least", id), nullptr, nullptr, 1.0, max_hands, &rule.min_hands});
    entries.push_back(
        {fmt::format("hands.{}_most", id), nullptr, nullptr, 1.0, max_hands, &rule.max_hands});
  }
}

void add_crew_rules(std::vector<Entry>& entries, CrewPractice& p) {
  const auto number = [&entries](std::string path, double& to, double min, double max) {
    entries.push_back({std::move(path), &to, nullptr, min, max});
  };
  constexpr double last_hour = 23.99;
  number("hours.bull_float_within_min", p.hours.bull_float_within_min, 1.0, max_minutes);
  number("hours.idle_told_min", p.hours.idle_told_min, 1.0, max_minutes);
  number("hours.go_home_min", p.hours.go_home_min, 1.0, max_minutes);
  number("hours.next_day_from_h", p.hours.next_day_from_h, 0.0, last_hour);
  number("hours.next_day_until_h", p.hours.next_day_until_h, 0.0, last_hour);
  number("pieces.area_m2", p.pieces.area_m2, 1.0, 10000.0);
  entries.push_back({"pieces.most", nullptr, nullptr, 1.0, 50.0, &p.pieces.max});
  number("touch.full_from_opens_factor", p.touch.full_from_opens_factor, 1.0, 100.0);
  number("touch.last_call_from_close_factor", p.touch.last_call_from_close_factor, 0.01, 1.0);
  number("coverage.release_powder_kg_m2", p.coverage.release_powder_kg_m2, 0.001, 10.0);
  number("coverage.release_liquid_l_m2", p.coverage.release_liquid_l_m2, 0.001, 10.0);
  number("coverage.curing_compound_l_m2", p.coverage.curing_compound_l_m2, 0.001, 10.0);
  number("coverage.sealer_l_m2", p.coverage.sealer_l_m2, 0.001, 10.0);
  number("coverage.sealer_coats", p.coverage.sealer_coats, 1.0, 10.0);
  number("coverage.cover_factor", p.coverage.cover_factor, 1.0, 3.0);
}

void add_spread_rules(std::vector<Entry>& entries, SpreadRules& p) {
  const auto number = [&entries](const char* key, double& to, double min, double max) {
    entries.push_back({fmt::format("spread.{}", key), &to, nullptr, min, max});
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
}

void add_observation_rules(std::vector<Entry>& entries, ObservationRules& p) {
  const auto number = [&entries](const char* key, double& to, double max) {
    constexpr double min = 0.001;  // nothing read on site is exact
    entries.push_back({fmt::format("reading.{}", key), &to, nullptr, min, max});
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

std::vector<Entry> entries_of(Practice& practice) {
  std::vector<Entry> entries;
  add_windows(entries, practice);
  add_surface_rules(entries, practice);
  add_day_rules(entries, practice);
  add_compare_rules(entries, practice.compare);
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
                       const std::vector<Entry>& entries) {
  std::vector<std::string_view> known;
  for (const Entry& entry : entries) known.push_back(entry.path);
  const auto meant = nearest(path, known);
  return error_at(path, where, "unknown entry",
                  meant ? fmt::format("did you mean {}?", *meant)
                        : std::string("the entries there are stand in practice.toml"));
}

/// Reads leaves below `table`, remembering which entries were met.
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
  std::size_t all() const { return entries_.size(); }
  /// Where the entry stands, if the text has it.
  std::optional<SourcePosition> place_of(const std::string& path) const {
    const auto found = places_.find(path);
    if (found == places_.end()) return std::nullopt;
    return found->second;
  }

 private:
  void read_leaf(const std::string& path, const TomlEntry& leaf) {
    const auto found = std::find_if(entries_.begin(), entries_.end(),
                                    [&path](const Entry& entry) { return entry.path == path; });
    if (found == entries_.end()) {
      diagnostics.push_back(unknown_key(path, leaf.where, entries_));
      return;
    }
    ++met;
    places_.emplace(path, leaf.value.where);
    if (found->flag != nullptr) {
      read_flag(*found, leaf.value);
    } else {
      read_number(*found, leaf.value);
    }
  }

  void refuse(const Entry& entry, const TomlValue& value, std::string_view expected) {
    diagnostics.push_back(error_at(entry.path, value.where,
                                   fmt::format("got {}, expected {}", shown(value), expected)));
  }

  void read_flag(const Entry& entry, const TomlValue& value) {
    if (const auto* const yes = std::get_if<bool>(&value.held)) {
      *entry.flag = *yes;
    } else {
      refuse(entry, value, "true or false");
    }
  }

  void read_number(const Entry& entry, const TomlValue& value) {
    const auto* const number = std::get_if<double>(&value.held);
    const bool counts = entry.count != nullptr;
    if (number == nullptr || !entry.holds(*number) || (counts && *number != std::floor(*number))) {
      refuse(entry, value, entry.expected());
      return;
    }
    if (entry.number != nullptr) *entry.number = *number;
    if (counts) *entry.count = static_cast<int>(*number);
  }

  std::vector<Entry> entries_;
  std::map<std::string, SourcePosition> places_;
};

/// Pairs that must stand in order: the lower's path and value, the upper's.
struct OrderedPair {
  std::string lower_path;
  double lower;
  std::string upper_path;
  double upper;
  bool may_be_equal = false;
};

void add_hand_pairs(std::vector<OrderedPair>& pairs, const CrewPractice& p) {
  for (std::size_t i = 0; i < task_kind_count; ++i) {
    const WorkRule& rule = p.work[i];
    const std::string path = fmt::format("hands.{}_", task_kind_id(static_cast<TaskKind>(i)));
    pairs.push_back({path + "least", static_cast<double>(rule.min_hands), path + "most",
                     static_cast<double>(rule.max_hands), true});
  }
}

std::vector<OrderedPair> ordered_pairs(const Practice& p) {
  std::vector<OrderedPair> pairs{
      {"evaporation.caution_kg_m2_h", p.evaporation.caution_kg_m2_h,
       "evaporation.precautions_kg_m2_h", p.evaporation.precautions_kg_m2_h},
      {"set.initial_set_psi", p.set.initial_set_psi, "set.final_set_psi", p.set.final_set_psi},
      {"compare.retarder_low_ml_100kg", p.compare.retarder_low_ml_100kg,
       "compare.retarder_high_ml_100kg", p.compare.retarder_high_ml_100kg},
      {"compare.earliest_start_h", p.compare.earliest_start_h, "compare.latest_start_h",
       p.compare.latest_start_h},
      {"set.seal_surface_min_c", p.set.seal_surface_min_c, "set.seal_surface_max_c",
       p.set.seal_surface_max_c},
      {"hours.next_day_from_h", p.crew.hours.next_day_from_h, "hours.next_day_until_h",
       p.crew.hours.next_day_until_h},
      {"saw.cut_by_ratio", p.saw.cut_by_ratio, "saw.late_ratio", p.saw.late_ratio}};
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Operation::tooled_joint); ++i) {
    const auto operation = static_cast<Operation>(i);
    const std::string table = fmt::format("operation.{}.", operation_id(operation));
    pairs.push_back({table + "opens_psi", p.window(operation).opens_psi, table + "closes_psi",
                     p.window(operation).closes_psi});
  }
  add_hand_pairs(pairs, p.crew);
  return pairs;
}

bool in_order(const OrderedPair& pair) {
  return pair.lower < pair.upper || (pair.may_be_equal && pair.lower <= pair.upper);
}

std::string order_fault(const OrderedPair& pair) {
  return fmt::format("got {}, expected {} {} ({})", pair.lower,
                     pair.may_be_equal ? "at most" : "less than", pair.upper, pair.upper_path);
}

void check_order(const Practice& practice, PracticeReader& reader) {
  for (const OrderedPair& pair : ordered_pairs(practice)) {
    if (in_order(pair)) continue;
    Diagnostic fault{Severity::error, pair.lower_path, order_fault(pair),
                     std::nullopt,    std::nullopt,    {}};
    fault.where = reader.place_of(pair.lower_path);
    const auto upper = reader.place_of(pair.upper_path);
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
  if (!has_error(reader.diagnostics)) check_order(practice, reader);
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

void validate(const Practice& practice) {
  Practice checked = practice;  // the entries point into something they may change
  for (const Entry& entry : entries_of(checked)) {
    if (entry.flag != nullptr) continue;
    const double value = entry.count != nullptr ? *entry.count : *entry.number;
    if (entry.holds(value)) continue;
    throw std::invalid_argument(
        fmt::format("{}: got {}, expected {}", entry.path, value, entry.expected()));
  }
  for (const OrderedPair& pair : ordered_pairs(practice)) {
    if (in_order(pair)) continue;
    throw std::invalid_argument(fmt::format("{}: {}", pair.lower_path, order_fault(pair)));
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
