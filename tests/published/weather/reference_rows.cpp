#include "published/weather/reference_rows.h"

#include <fstream>

#include <fmt/format.h>

namespace slabtide::testing {
namespace {

std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> fields(1);
  for (const char c : line) {
    if (c == ',') {
      fields.emplace_back();
    } else {
      fields.back() += c;
    }
  }
  return fields;
}

}  // namespace

ReferenceRows reference_rows(std::string_view name) {
  std::ifstream file(fmt::format("{}/{}.csv", SLABTIDE_REFERENCES, name));
  ReferenceRows rows;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) rows.push_back(split(line));
  return rows;
}

}  // namespace slabtide::testing
