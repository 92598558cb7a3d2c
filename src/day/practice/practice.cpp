#include "slabtide/day/practice/practice.h"

#include <algorithm>
#include <cmath>
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
