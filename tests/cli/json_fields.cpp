#include "cli/json_fields.h"

#include <algorithm>
#include <sstream>
#include <stdexcept>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace slabtide::test {
namespace {

using Json = nlohmann::ordered_json;

std::string shown(const Json& document, const std::string& pointer) {
  const Json::json_pointer at(pointer);
  if (!document.contains(at)) return "is not there";
  const Json& value = document.at(at);
  if (value.is_array()) return fmt::format("list of {}", value.size());
  if (value.is_object()) return fmt::format("object of {}", value.size());
  return value.dump();
}

}  // namespace

std::string json_fields(std::string_view document, std::string_view fields) {
  const Json json = Json::parse(document, nullptr, false);
  if (json.is_discarded()) throw std::invalid_argument("no JSON");
  std::istringstream lines{std::string(fields)};
  std::string text;
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with('/')) {
      line.resize(std::min(line.find(' '), line.size()));
      line += ' ' + shown(json, line);
    }
    text += line + '\n';
  }
  return text;
}

}  // namespace slabtide::test
