#include "published/table.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <optional>
#include <sstream>

#include <fmt/format.h>

#include "core/text.h"

namespace slabtide::test {

namespace {

/// Three digits without trailing zeros: half a digit may have a tiny excess.
std::string tolerance_text(double tolerance) {
  if (tolerance <= 0.0) return "0";
  constexpr int digits = 3;
  const int order = static_cast<int>(std::floor(std::log10(tolerance)));
  std::string text = fmt::format("{:.{}f}", tolerance, std::max(0, digits - 1 - order));
  if (text.find('.') != std::string::npos) text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

bool is_same_check(const SeenRow& a, const SeenRow& b) {
  return a.what == b.what && a.source == b.source && a.unit == b.unit;
}

const SeenRow& worst_of(const Check& check) {
  return *std::ranges::max_element(check, {},
                                   [](const SeenRow& row) { return std::abs(row.apart); });
}

std::string allowed_by(const Check& check) {
  const auto [min, max] = std::ranges::minmax(check, {}, &SeenRow::tolerance);
  if (min.tolerance == max.tolerance) return tolerance_text(max.tolerance);
  return tolerance_text(min.tolerance) + " to " + tolerance_text(max.tolerance);
}

std::string with_unit(const std::string& text, const std::string& unit) {
  return unit.empty() ? text : text + " " + unit;
}

std::size_t missed_in(const Check& check) {
  return static_cast<std::size_t>(std::ranges::count_if(check, std::not_fn(meets)));
}

/// The count: "22"; if one row represents many, its own words, "3000 positions".
std::string count_of(const Check& check) {
  const bool stands_for_many = check.size() == 1 && !check.front().seen;
  return stands_for_many ? check.front().figure : std::to_string(check.size());
}

std::string check_line(const Check& check) {
  const SeenRow& first = check.front();
  const std::size_t missed = missed_in(check);
  return fmt::format("| {} | {} | {} | {} | {} | {} | {} | {} |\n", first.what, first.source,
                     first.status, count_of(check), missed == 0 ? "" : std::to_string(missed),
                     with_unit(allowed_by(check), first.unit), first.because,
                     apart_text(worst_of(check)));
}

std::string figure_line(const SeenRow& row) {
  const std::string seen = row.seen ? fmt::format("{:.{}f}", *row.seen, decimals_of(row)) : "";
  return fmt::format("| {} | {} | {} | {} | {}{} |\n", row.row, row.figure, seen, apart_text(row),
                     tolerance_text(row.tolerance), meets(row) ? "" : ": not met");
}

std::string figures_of(const Check& check) {
  const std::string& unit = check.front().unit;
  std::string text = fmt::format("\n{}{}\n\n", check.front().what, unit.empty() ? "" : ", " + unit);
  text += "| figure | outside | here | apart | allowed |\n|---|---|---|---|---|\n";
  for (const SeenRow& row : check) text += figure_line(row);
  return text;
}

struct MissedRows {
  const MissedCheck* listed;
  const Check* check;
};

/// The listed checks that occurred, in the order of the list.
std::vector<MissedRows> missed_in(const std::vector<Check>& checks,
                                  const std::vector<MissedCheck>& list) {
  std::vector<MissedRows> result;
  for (const MissedCheck& listed : list) {
    const auto seen = std::ranges::find_if(
        checks, [&](const Check& check) { return check.front().what == listed.what; });
    if (seen != checks.end()) result.push_back({&listed, &*seen});
  }
  return result;
}

std::vector<Check> checks_of(const std::vector<ModuleRows>& modules) {
  std::vector<Check> checks;
  for (const ModuleRows& module : modules) {
    std::ranges::copy(checks_of(module.rows), std::back_inserter(checks));
  }
  return checks;
}

const SeenRow* seen_in(const Check& check, const Miss& miss) {
  const auto found = std::ranges::find(check, miss.row, &SeenRow::row);
  return found == check.end() ? nullptr : &*found;
}

/// By how much, as listed, so that the text does not depend on the compiler.
std::string missed_by(const Check& check, const Miss& miss) {
  const SeenRow* row = seen_in(check, miss);
  return row == nullptr ? "" : fmt::format("{:+.{}f}", miss.apart, decimals_of(*row));
}

std::string missed_rows(const std::vector<ModuleRows>& modules,
                        const std::vector<MissedCheck>& list) {
  std::string text;
  const std::vector<Check> checks = checks_of(modules);
  for (const auto& [listed, check] : missed_in(checks, list)) {
    const std::string allowed = with_unit(allowed_by(*check), check->front().unit);
    text += fmt::format("\n**{}** (allowed: {}). {}\n\n| figure | off by |\n|---|---|\n",
                        listed->what, allowed, listed->why);
    for (const Miss& miss : listed->rows) {
      text += fmt::format("| {} | {} |\n", miss.row, missed_by(*check, miss));
    }
  }
  return text;
}

std::string short_words(const Miss& miss, const std::string& unit) {
  return with_unit(fmt::format("{:+.3g}", miss.apart), unit);
}

const Miss& worst_of(const MissedCheck& listed) {
  return *std::ranges::max_element(listed.rows, {},
                                   [](const Miss& miss) { return std::abs(miss.apart); });
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, '|');) cells.push_back(cell);
  return cells;
}

/// Cell 0 is the text before the first bar.
bool is_measured(std::size_t cell, std::size_t cells) {
  constexpr std::size_t check_cells = 9;
  constexpr std::size_t figure_cells = 6;
  constexpr std::size_t here = 3;
  constexpr std::size_t apart = 4;
  if (cells == check_cells) return cell == check_cells - 1;
  return cells == figure_cells && (cell == here || cell == apart);
}

std::optional<double> number_in(const std::string& cell) {
  const auto plus = cell.find('+');
  return parse_number(plus == std::string::npos ? cell : cell.substr(plus + 1));
}

std::size_t decimals_in(const std::string& cell) {
  const auto point = cell.find('.');
  if (point == std::string::npos) return 0;
  return cell.find_last_of("0123456789") - point;
}

bool is_same_figure(const std::string& a, const std::string& b) {
  const auto first = number_in(a);
  const auto second = number_in(b);
  if (!first || !second) return false;
  constexpr double one_and_a_hair = 1.01;
  const double last_digit = std::pow(10.0, -static_cast<double>(decimals_in(a)));
  return std::abs(*first - *second) <= one_and_a_hair * last_digit;
}

bool is_same_line(const std::string& one, const std::string& other) {
  if (one == other) return true;
  const auto a = cells_of(one);
  const auto b = cells_of(other);
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] == b[i]) continue;
    if (!is_measured(i, a.size()) || !is_same_figure(a[i], b[i])) return false;
  }
  return true;
}

}  // namespace

std::vector<Check> checks_of(const std::vector<SeenRow>& rows) {
  std::vector<Check> checks;
  for (const SeenRow& row : rows) {
    const auto known = std::ranges::find_if(
        checks, [&](const Check& check) { return is_same_check(check.front(), row); });
    if (known == checks.end()) {
      checks.push_back({row});
    } else {
      known->push_back(row);
    }
  }
  return checks;
}

std::string published_table(const std::vector<ModuleRows>& modules,
                            const std::vector<MissedCheck>& list) {
  std::string table = "\n## Does not meet\n" + missed_rows(modules, list);
  std::string figures = "\n## Every figure\n";
  for (const ModuleRows& module : modules) {
    table += fmt::format("\n## {}\n\n", module.heading);
    table += "| check | source | status | figures | not met | allowed | because | worst seen |\n";
    table += "|---|---|---|---|---|---|---|---|\n";
    figures += fmt::format("\n### {}\n", module.heading);
    for (const Check& check : checks_of(module.rows)) {
      table += check_line(check);
      figures += figures_of(check);
    }
  }
  return table + figures;
}

std::string missed_table(const std::vector<ModuleRows>& modules,
                         const std::vector<MissedCheck>& list) {
  std::string table = "| what | not met | off by up to | why |\n|---|---|---|---|\n";
  std::string minor;
  const std::vector<Check> checks = checks_of(modules);
  for (const auto& [listed, check] : missed_in(checks, list)) {
    const std::string worst = short_words(worst_of(*listed), check->front().unit);
    if (listed->is_minor) {
      minor += fmt::format("{}{} ({})", minor.empty() ? "" : ", ", listed->in_words, worst);
    } else {
      table += fmt::format("| {} | {} of {} | {} | {} |\n", listed->in_words, listed->rows.size(),
                           check->size(), worst, listed->why);
    }
  }
  if (minor.empty()) return table;
  constexpr std::size_t width = 100;
  return table + "\n" +
         wrap("Far smaller than what a forecast is off by: " + minor + ".", width, 0) + "\n";
}

bool same_table(const std::string& one, const std::string& other) {
  std::istringstream a(one);
  std::istringstream b(other);
  std::string first;
  std::string second;
  while (std::getline(a, first)) {
    if (!std::getline(b, second) || !is_same_line(first, second)) return false;
  }
  return !std::getline(b, second);
}

}  // namespace slabtide::test
