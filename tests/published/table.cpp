#include "published/table.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <sstream>

#include <fmt/format.h>

#include "slabtide/core/text.h"

namespace slabtide::test {

namespace {

constexpr double most_slack = 2.5;  // a tolerance over the worst seen; ours
constexpr int most_decimals = 7;

/// So many that a hundredth of the tolerance shows, or a tenth.
int decimals_of(const SeenRow& row) {
  if (row.tolerance <= 0.0) return 1;
  constexpr double hair = 1e-9;
  const int order = static_cast<int>(std::floor(std::log10(row.tolerance) + hair));
  return std::clamp(1 - order, 0, most_decimals);
}

std::string signed_text(double value, int decimals) {
  const std::string text = fmt::format("{:+.{}f}", value, decimals);
  const bool is_zero = text.find_first_of("123456789") == std::string::npos;
  return is_zero ? text.substr(1) : text;
}

std::string apart_text(const SeenRow& row) { return signed_text(row.apart, decimals_of(row)); }

/// Three digits, without the zeros behind them: half a digit may have a hair more than it says.
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
  const auto [least, most] = std::ranges::minmax(check, {}, &SeenRow::tolerance);
  if (least.tolerance == most.tolerance) return tolerance_text(most.tolerance);
  return tolerance_text(least.tolerance) + " to " + tolerance_text(most.tolerance);
}

std::string with_unit(const std::string& text, const std::string& unit) {
  return unit.empty() ? text : text + " " + unit;
}

/// How many: "22"; where one row stands for many, its own words, "3000 positions".
std::string count_of(const Check& check) {
  const bool stands_for_many = check.size() == 1 && !check.front().seen;
  return stands_for_many ? check.front().figure : std::to_string(check.size());
}

std::string check_line(const Check& check) {
  const SeenRow& first = check.front();
  return fmt::format("| {} | {} | {} | {} | {} | {} |\n", first.what, first.source, first.status,
                     count_of(check), with_unit(allowed_by(check), first.unit),
                     apart_text(worst_of(check)));
}

std::string figure_line(const SeenRow& row) {
  const std::string seen = row.seen ? fmt::format("{:.{}f}", *row.seen, decimals_of(row)) : "";
  return fmt::format("| {} | {} | {} | {} | {} |\n", row.row, row.figure, seen, apart_text(row),
                     tolerance_text(row.tolerance));
}

std::string figures_of(const Check& check) {
  const std::string& unit = check.front().unit;
  std::string text = fmt::format("\n{}{}\n\n", check.front().what, unit.empty() ? "" : ", " + unit);
  text += "| figure | outside | here | apart | allowed |\n|---|---|---|---|---|\n";
  for (const SeenRow& row : check) text += figure_line(row);
  return text;
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, '|');) cells.push_back(cell);
  return cells;
}

/// Cell 0 is what stands before the first bar.
bool is_measured(std::size_t cell, std::size_t cells) {
  constexpr std::size_t check_cells = 7;
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

std::string published_table(const std::vector<ModuleRows>& modules) {
  std::string table;
  std::string figures = "\n## Every figure\n";
  for (const ModuleRows& module : modules) {
    table += fmt::format("\n## {}\n\n", module.heading);
    table += "| check | source | status | figures | allowed | worst seen |\n";
    table += "|---|---|---|---|---|---|\n";
    figures += fmt::format("\n### {}\n", module.heading);
    for (const Check& check : checks_of(module.rows)) {
      table += check_line(check);
      figures += figures_of(check);
    }
  }
  return table + figures;
}

std::vector<std::string> slack_tolerances(const std::vector<SeenRow>& rows) {
  std::vector<std::string> slack;
  for (const Check& check : checks_of(rows)) {
    for (const SeenRow& row : check) {
      if (row.as_given) continue;
      double worst = 0.0;
      for (const SeenRow& other : check) {
        if (other.tolerance == row.tolerance) worst = std::max(worst, std::abs(other.apart));
      }
      if (row.tolerance <= most_slack * worst) continue;
      slack.push_back(fmt::format("{}, {}: allowed {:g}, worst seen {:.3g}", row.what, row.row,
                                  row.tolerance, worst));
    }
  }
  return slack;
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
