#include "table_reader.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/text.h"
#include "core/typed_place.h"
#include "job/geometry/compass.h"
#include "table_words.h"

namespace slabtide {

namespace {

/// After this many findings the file is probably not a job file at all.
constexpr std::size_t max_findings = 500;

/// More than any outline needs; keeps the checks for crossing sides quick.
constexpr std::size_t max_points = 400;

}  // namespace

TableReader::TableReader(const TomlTable& table, std::string path, UnitSystem units,
                         std::vector<Diagnostic>& findings, const TomlKind& kind)
    : table_(table), path_(std::move(path)), units_(units), findings_(findings), kind_(kind) {}

std::string TableReader::path_of(std::string_view key) const {
  if (path_.empty() || key.empty()) return path_ + std::string(key);
  return fmt::format("{}.{}", path_, key);
}

// Reporting.

void TableReader::report(Severity severity, std::string_view key, std::string message,
                         SourcePosition place, std::string next_step,
                         std::optional<SourcePosition> also_where) {
  // Nobody reads more than this, but the first error counts even if it comes late.
  if (findings_.size() >= max_findings && (severity != Severity::error || has_error(findings_))) {
    return;
  }
  findings_.push_back(
      {severity, path_of(key), std::move(message), place, also_where, std::move(next_step)});
}

void TableReader::error(std::string_view key, std::string message, std::string next_step,
                        std::optional<SourcePosition> also_where) {
  report(Severity::error, key, std::move(message), where(key), std::move(next_step), also_where);
}

void TableReader::error_at(SourcePosition place, std::string_view key, std::string message,
                           std::string next_step) {
  report(Severity::error, key, std::move(message), place, std::move(next_step));
}

void TableReader::warning(std::string_view key, std::string message, std::string next_step) {
  report(Severity::warning, key, std::move(message), where(key), std::move(next_step));
}

bool TableReader::refuse_both(std::string_view key, std::string_view other, std::string why) {
  if (!has(key) || !has(other)) return false;
  if (why.empty()) why = fmt::format("keep `{}` or `{}`, not both", key, other);
  error(other, fmt::format("cannot be given together with `{}`", key), std::move(why), where(key));
  return true;
}

void TableReader::wrong(const TomlEntry& entry, const TomlValue& value, std::string_view expected,
                        std::string next_step) {
  report(Severity::error, entry.key, fmt::format("got {}, expected {}", shown(value), expected),
         value.where, std::move(next_step));
}

void TableReader::miss(std::string_view key, std::string next_step) {
  if (next_step.empty()) next_step = kind_.advice;
  std::optional<SourcePosition> place;  // none if the whole file is meant
  if (!path_.empty()) place = table_.where;
  missing_.emplace_back(key, Diagnostic{Severity::error, path_of(key), "missing", place,
                                        std::nullopt, std::move(next_step)});
}

// Known, unknown and missing keys.

const TomlEntry* TableReader::spelled(std::string_view text, std::string_view key) {
  spellings_.push_back({std::string(text), std::string(key)});
  return find(table_, text);
}

const TomlEntry* TableReader::look_up(std::string_view key) {
  const TomlEntry* const found = spelled(key, key);
  asked_.push_back({std::string(key), {found, nullptr}});
  return found;
}

TableReader::Written TableReader::look_up(std::string_view key, const Quantity& kind) {
  Written found{spelled(key, key), &kind.usual(units_)};
  for (const auto& unit : kind.units) {
    const TomlEntry* const other = spelled(with_suffix(key, unit), key);
    if (other == nullptr || other == found.entry) continue;
    if (found.entry != nullptr) {
      report(Severity::error, other->key,
             fmt::format("given twice: `{}` says the same", found.entry->key), other->value.where,
             "keep one of the two", found.entry->value.where);
    }
    found = {other, &unit};
  }
  asked_.push_back({std::string(key), found});
  return found;
}

TableReader::Written TableReader::required(Written found, std::string_view key,
                                           const Quantity& kind, Presence presence) {
  if (found.entry == nullptr && presence == Presence::required) {
    const Unit& unit = kind.usual(units_);
    miss(key, fmt::format("write `{}` ({}), or name the unit: `{}`", key, unit.shown,
                          fmt::join(with_suffixes(key, kind), "`, `")));
  }
  return found;
}

const TomlEntry* TableReader::entry(std::string_view key, Presence presence) {
  const TomlEntry* const found = look_up(key);
  if (found == nullptr && presence == Presence::required) miss(key);
  return found;
}

const TableReader::Written* TableReader::asked_for(std::string_view key) const {
  const auto found = std::find_if(asked_.begin(), asked_.end(), [&](const Asked& asked) {
    return asked.key == key && asked.found.entry != nullptr;
  });
  return found == asked_.end() ? nullptr : &found->found;
}

const Unit* TableReader::unit_of(std::string_view key) const {
  const Written* const found = asked_for(key);
  return found == nullptr ? nullptr : found->unit;
}

bool TableReader::has(std::string_view key) const { return asked_for(key) != nullptr; }

bool TableReader::none_or_listed(std::string_view key, std::string_view none_key) {
  const TomlEntry* const none = entry(none_key);
  if (none == nullptr) return has(key);
  if (refuse_both(key, none_key)) return false;
  const auto* const list = std::get_if<TomlArray>(&none->value.held);
  if (list != nullptr && list->empty()) return true;
  wrong(*none, none->value, "[] for none",
        fmt::format("each is written as a table [[{}]]", header_of(path_of(key))));
  return false;
}

bool TableReader::holds_table(std::string_view key) const {
  const TomlEntry* const found = find(table_, key);
  return found != nullptr && std::holds_alternative<TomlTable>(found->value.held);
}

SourcePosition TableReader::where(std::string_view key) const {
  const Written* const found = asked_for(key);
  return found == nullptr ? table_.where : found->entry->value.where;
}

void TableReader::refuse_without_header(std::string_view below,
                                        std::span<const std::string_view> keys) {
  const std::string header = fmt::format("[[{}]]", header_of(path_of(below)));
  bool told = false;
  for (const TomlEntry& entry : table_.entries) {
    const auto is_key = [&](std::string_view key) {
      return entry.key == key || entry.key.starts_with(fmt::format("{}_", key));
    };
    if (std::none_of(keys.begin(), keys.end(), is_key)) continue;
    spelled(entry.key, entry.key);  // told here, and so not again as unknown
    if (told) continue;
    told = true;
    report(Severity::error, entry.key, fmt::format("has no header {}", header), entry.where,
           fmt::format("write {} on the line above it", header));
  }
}

void TableReader::refuse_the_rest() {
  std::vector<std::string_view> known;
  for (const auto& spelling : spellings_) known.push_back(spelling.text);
  for (const auto& entry : table_.entries) {
    if (std::find(known.begin(), known.end(), entry.key) != known.end()) continue;
    const auto meant = nearest(entry.key, known);
    const bool table = std::holds_alternative<TomlTable>(entry.value.held);
    report(Severity::error, entry.key, table ? "unknown table" : "unknown key", entry.where,
           meant ? fmt::format("did you mean `{}`?", *meant) : list_of_keys());
    if (meant) forget_missing(*meant);
  }
  for (auto& [key, diagnostic] : missing_) {
    if (findings_.size() < max_findings || !has_error(findings_)) {
      findings_.push_back(std::move(diagnostic));
    }
  }
}

/// A misspelt key is reported once, not also as a missing key.
void TableReader::forget_missing(std::string_view spelling) {
  const auto found = std::find_if(spellings_.begin(), spellings_.end(),
                                  [&](const Spelling& known) { return known.text == spelling; });
  std::erase_if(missing_, [&](const auto& missing) { return missing.first == found->key; });
}

std::string TableReader::list_of_keys() const {
  std::vector<std::string_view> keys;
  for (const auto& asked : asked_) keys.push_back(asked.key);
  return fmt::format("the keys known here are {}", fmt::join(keys, ", "));
}

// Plain values.

std::optional<std::string> TableReader::text(std::string_view key, Presence presence) {
  const TomlEntry* const found = entry(key, presence);
  if (found == nullptr) return std::nullopt;
  const auto* const text = std::get_if<std::string>(&found->value.held);
  if (text == nullptr) {
    wrong(*found, found->value, "text", "write it in quotation marks");
    return std::nullopt;
  }
  if (text->find_first_not_of(' ') == std::string::npos) {
    wrong(*found, found->value, "text that is not empty");
    return std::nullopt;
  }
  if (holds_control(*text)) {
    error(key, "holds a line break or another control character",
          "write it on one line, in letters, digits and signs");
    return std::nullopt;
  }
  return *text;
}

std::optional<bool> TableReader::yes_no(std::string_view key) {
  const TomlEntry* const found = entry(key);
  if (found == nullptr) return std::nullopt;
  if (const auto* const yes = std::get_if<bool>(&found->value.held)) return *yes;
  if (const auto* const word = std::get_if<std::string>(&found->value.held)) {
    if (plain_word(*word) == "yes") return true;
    if (plain_word(*word) == "no") return false;
  }
  wrong(*found, found->value, "true or false, or yes or no");
  return std::nullopt;
}

std::optional<double> TableReader::finite(const TomlEntry& entry, const TomlValue& value,
                                          std::string_view expected, std::string_view what) {
  const auto* const number = std::get_if<double>(&value.held);
  if (number != nullptr && std::isfinite(*number)) return *number + 0.0;  // -0 becomes 0
  const auto* const text = std::get_if<std::string>(&value.held);
  const std::string_view noun = what.substr(0, what.find(' '));
  const auto written = text == nullptr ? std::nullopt : parse_count(*text, noun, units_);
  if (written) return *written;
  const bool comma = text != nullptr && text->find(',') != std::string::npos;
  wrong(entry, value, expected,
        text == nullptr ? ""
        : comma         ? "decimals come after a point, such as 0.45"
                        : "write only a number");
  return std::nullopt;
}

std::optional<double> TableReader::angle(std::string_view key, const Range& range,
                                         std::string_view what, std::string_view sides) {
  const TomlEntry* const found = entry(key, Presence::required);
  const auto* const text =
      found == nullptr ? nullptr : std::get_if<std::string>(&found->value.held);
  if (text == nullptr) return found == nullptr ? std::nullopt : number(key, range, what);
  const auto degrees = parse_angle_deg(*text, sides);
  if (degrees && range.holds(*degrees)) return degrees;
  wrong(*found, found->value, fmt::format("{} {}", shown(range), what));
  return std::nullopt;
}

std::optional<double> TableReader::number(std::string_view key, const Range& range,
                                          std::string_view what, Presence presence) {
  const TomlEntry* const found = entry(key, presence);
  if (found == nullptr) return std::nullopt;
  const std::string expected = fmt::format("{}{}{}", shown(range), what.empty() ? "" : " ", what);
  const auto value = finite(*found, found->value, expected, what);
  if (!value || range.holds(*value)) return value;
  wrong(*found, found->value, expected);
  return std::nullopt;
}

std::optional<int> TableReader::whole_number(std::string_view key, const Range& range) {
  const auto value = number(key, range, "");
  if (!value) return std::nullopt;
  if (*value != std::floor(*value)) {
    error(key, fmt::format("got {}, expected a whole number", shown(asked_for(key)->entry->value)));
    return std::nullopt;
  }
  return static_cast<int>(*value);
}

// Quantities.

std::optional<double> TableReader::quantity(std::string_view key, const Quantity& kind,
                                            const Range& range, Presence presence) {
  const Written written = required(look_up(key, kind), key, kind, presence);
  if (written.entry == nullptr) return std::nullopt;
  const TomlValue& typed = written.entry->value;
  const auto said = measured(written, typed, kind, shown(range, *written.unit));
  if (!said) return std::nullopt;
  const auto [value, unit] = *said;
  asked_.back().found.unit = unit;
  if (!kind.is_slip(value, *unit) && range.holds(unit->to_si(value))) return unit->to_si(value);
  const auto* const text = std::get_if<std::string>(&typed.held);
  report(Severity::error, written.entry->key,
         fmt::format("got {}, expected {}",
                     text == nullptr ? shown(value, *unit) : as_typed(*text, *said, kind, units_),
                     expected_words(value, *unit, kind, range)),
         typed.where, other_observation(key, value, *unit, kind, range));
  return std::nullopt;
}

std::optional<WrittenQuantity> TableReader::measured(const Written& written, const TomlValue& value,
                                                     const Quantity& kind,
                                                     std::string_view expected) {
  const Unit& unit = *written.unit;
  const auto* const text = std::get_if<std::string>(&value.held);
  if (text == nullptr) {
    const auto number = finite(*written.entry, value, expected);
    if (!number) return std::nullopt;
    return WrittenQuantity{*number, &unit};
  }
  auto said = parse_quantity(without_noun(*text, written.entry->key), kind, units_);
  if (!said) {
    wrong(*written.entry, value, expected,
          fmt::format("write a number, or a number and its unit, such as {}",
                      shown(kind.usual(units_).suffix == "ft" ? 4.0 : 5.0, kind.usual(units_))));
    return std::nullopt;
  }
  const bool other_unit = said->unit != nullptr && said->unit->suffix != unit.suffix;
  if (other_unit && written.entry->key.ends_with(fmt::format("_{}", unit.suffix))) {
    wrong(*written.entry, value, expected,
          fmt::format("the key says {}: leave the unit out of one of them", unit.shown));
    return std::nullopt;
  }
  if (said->unit == nullptr) said->unit = &unit;
  return said;
}

// Points and directions.

std::optional<Point> TableReader::point_of(const Written& written, const TomlValue& value) {
  const Unit& unit = *written.unit;
  const auto* const pair = std::get_if<TomlArray>(&value.held);
  if (pair == nullptr || pair->size() != 2) {
    wrong(*written.entry, value, fmt::format("a point: [x, y] in {}", unit.shown),
          "x runs east and y north");
    return std::nullopt;
  }
  const std::string expected = shown(limits::plan_m, unit);
  const auto x = measured(written, pair->front(), length_quantity, expected);
  const auto y = measured(written, pair->back(), length_quantity, expected);
  if (!x || !y) return std::nullopt;
  asked_.back().found.unit = x->unit;
  const Point point{x->unit->to_si(x->value), y->unit->to_si(y->value)};
  if (limits::plan_m.holds(point.x_m) && limits::plan_m.holds(point.y_m)) return point;
  const bool is_x = !limits::plan_m.holds(point.x_m);
  wrong(*written.entry, is_x ? pair->front() : pair->back(),
        shown(limits::plan_m, is_x ? *x->unit : *y->unit));
  return std::nullopt;
}

std::optional<Point> TableReader::point(std::string_view key, Presence presence) {
  const Written written = required(look_up(key, length_quantity), key, length_quantity, presence);
  if (written.entry == nullptr) return std::nullopt;
  return point_of(written, written.entry->value);
}

std::optional<std::vector<Point>> TableReader::points(std::string_view key) {
  const Written written = look_up(key, length_quantity);
  if (written.entry == nullptr) return std::nullopt;
  const auto* const list = std::get_if<TomlArray>(&written.entry->value.held);
  if (list == nullptr || list->size() > max_points) {
    wrong(*written.entry, written.entry->value,
          fmt::format("a list of at most {} points: [[x, y], [x, y], ...]", max_points));
    return std::nullopt;
  }
  std::vector<Point> points;
  for (const auto& value : *list) {
    const auto point = point_of(written, value);
    if (!point) return std::nullopt;
    points.push_back(*point);
  }
  return points;
}

std::optional<double> TableReader::direction_deg(std::string_view key) {
  const TomlEntry* const found = entry(key);
  if (found == nullptr) return std::nullopt;
  if (const auto* const word = std::get_if<std::string>(&found->value.held)) {
    if (const auto degrees = compass_deg(plain_word(*word))) return degrees;
  } else if (const auto* const degrees = std::get_if<double>(&found->value.held)) {
    if (Range{0.0, full_turn_deg}.holds(*degrees)) return std::fmod(*degrees, full_turn_deg);
  }
  wrong(*found, found->value,
        "north, northeast, east and so on, or 0 to 360 degrees clockwise from north");
  return std::nullopt;
}

// Words.

std::optional<std::size_t> TableReader::index_of(const TomlEntry& entry, const TomlValue& value,
                                                 const std::vector<std::string_view>& words) {
  const auto* const text = std::get_if<std::string>(&value.held);
  if (const auto index = text == nullptr ? std::nullopt : index_of_word(*text, words)) return index;
  const auto meant = text == nullptr ? std::nullopt : nearest(*text, words);
  wrong(entry, value, choice(words),
        meant ? fmt::format("did you mean \"{}\"?", *meant) : std::string());
  return std::nullopt;
}

std::optional<std::size_t> TableReader::find_word(std::string_view key,
                                                  const std::vector<std::string_view>& words,
                                                  Presence presence) {
  const TomlEntry* const found = entry(key, presence);
  if (found == nullptr) return std::nullopt;
  return index_of(*found, found->value, words);
}

std::vector<std::size_t> TableReader::find_words(std::string_view key,
                                                 const std::vector<std::string_view>& words) {
  const TomlEntry* const found = entry(key);
  if (found == nullptr) return {};
  std::vector<std::size_t> result;
  for (const auto& value : as_list(found->value)) {
    if (const auto index = index_of(*found, value, words)) result.push_back(*index);
  }
  return result;
}

std::vector<std::pair<std::string, SourcePosition>> TableReader::texts(std::string_view key) {
  const TomlEntry* const found = entry(key);
  if (found == nullptr) return {};
  std::vector<std::pair<std::string, SourcePosition>> result;
  for (const auto& value : as_list(found->value)) {
    const auto* const text = std::get_if<std::string>(&value.held);
    if (text == nullptr) {
      wrong(*found, value, "text in quotation marks");
      return {};
    }
    result.emplace_back(*text, value.where);
  }
  return result;
}

// Tables within.

std::optional<TableReader> TableReader::open_table(std::string_view key, Presence presence) {
  const TomlEntry* const found = look_up(key);
  if (found == nullptr) {
    if (presence == Presence::required) {
      miss(key, table_advice(fmt::format("[{}]", path_of(key)), kind_));
    }
    return std::nullopt;
  }
  const auto* const table = std::get_if<TomlTable>(&found->value.held);
  if (table == nullptr) {
    wrong(*found, found->value, fmt::format("one table, [{}]", path_of(key)));
    return std::nullopt;
  }
  return TableReader(*table, path_of(key), units_, findings_, kind_);
}

std::vector<TableReader> TableReader::open_tables(std::string_view key, Presence presence,
                                                  std::size_t max) {
  const std::string header = fmt::format("[[{}]]", header_of(path_of(key)));
  const TomlEntry* const found = look_up(key);
  if (found == nullptr) {
    if (presence == Presence::required) miss(key, table_advice(header, kind_));
    return {};
  }
  const auto* const list = std::get_if<TomlArray>(&found->value.held);
  if (list == nullptr) {
    wrong(*found, found->value, "a list of tables, each headed " + header,
          "write the header with two brackets on each side");
    return {};
  }
  if (list->size() > max) {
    error(key, fmt::format("got {} tables {}, expected at most {}", list->size(), header, max),
          "leave out what the pour can do without, or make it two pours");
    return {};
  }
  std::vector<TableReader> result;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const auto* const table = std::get_if<TomlTable>(&(*list)[i].held);
    if (table == nullptr) {
      wrong(*found, (*list)[i], "a table");
      continue;
    }
    result.emplace_back(*table, fmt::format("{}[{}]", path_of(key), i + 1), units_, findings_,
                        kind_);
  }
  return result;
}

}  // namespace slabtide
