#include "csv_text.h"

namespace slabtide {

namespace {

std::string quoted_cell(std::string_view cell) {
  if (cell.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(cell);
  std::string result = "\"";
  for (const char c : cell) {
    if (c == '"') result += '"';
    result += c;
  }
  return result + '"';
}

}  // namespace

std::string csv_safe(std::string_view text) {
  constexpr std::string_view telling = "=+-@\t\r\n'";
  const bool could_compute = !text.empty() && telling.find(text.front()) != std::string_view::npos;
  return could_compute ? std::string("'").append(text) : std::string(text);
}

std::string csv_record(const std::vector<std::string>& cells) {
  std::string record;
  for (const std::string& cell : cells) {
    if (&cell != &cells.front()) record += ',';
    record += quoted_cell(cell);
  }
  return record + "\r\n";
}

}  // namespace slabtide
