#include "published/seen_row.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <stdexcept>

#include <fmt/format.h>

#include "core/text.h"

namespace slabtide::test {

namespace {

constexpr std::size_t field_count = 10;
constexpr int max_decimals = 7;

double number(const std::string& text) {
  const auto value = parse_number(text);
  if (!value) throw std::runtime_error("not a number: " + text);
  return *value;
}

SeenRow row_of(const std::string& line) {
  std::vector<std::string> fields(1);
  for (const char c : line) {
    if (c == '\t') {
      fields.emplace_back();
    } else {
      fields.back() += c;
    }
  }
  if (fields.size() != field_count) throw std::runtime_error("not a row: " + line);
  SeenRow row{fields[0], fields[1], fields[2], fields[3], number(fields[4]),
              fields[5], fields[6], fields[7], {},        number(fields[9])};
  if (!fields[8].empty()) row.seen = number(fields[8]);
  return row;
}

}  // namespace

bool meets(const SeenRow& row) {
  constexpr double machine_rounding = 1.0e-9;  // of the tolerance
  return std::abs(row.apart) <= row.tolerance * (1.0 + machine_rounding);
}

int decimals_of(const SeenRow& row) {
  if (row.tolerance <= 0.0) return 1;
  constexpr double hair = 1e-9;
  const int order = static_cast<int>(std::floor(std::log10(row.tolerance) + hair));
  return std::clamp(1 - order, 0, max_decimals);
}

std::string apart_text(const SeenRow& row) {
  const std::string text = fmt::format("{:+.{}f}", row.apart, decimals_of(row));
  const bool is_zero = text.find_first_of("123456789") == std::string::npos;
  return is_zero ? text.substr(1) : text;
}

std::string line_of(const SeenRow& row) {
  for (const std::string& text :
       {row.what, row.source, row.status, row.unit, row.because, row.row, row.figure}) {
    if (text.find_first_of("\t\n|") != std::string::npos) throw std::invalid_argument(text);
  }
  return fmt::format("{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}\n", row.what, row.source, row.status,
                     row.unit, row.tolerance, row.because, row.row, row.figure,
                     row.seen ? fmt::format("{}", *row.seen) : "", row.apart);
}

std::vector<SeenRow> rows_in(const std::filesystem::path& file) {
  std::vector<SeenRow> rows;
  std::ifstream in(file);
  for (std::string line; std::getline(in, line);) rows.push_back(row_of(line));
  return rows;
}

}  // namespace slabtide::test
