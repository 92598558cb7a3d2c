#include "job_document.h"

#include <utility>

#include <nlohmann/json.hpp>

#include "job/toml/plain_values.h"
#include "job/toml/toml_tree.h"

namespace slabtide {
namespace {

using Json = nlohmann::ordered_json;

Json json_of(const TomlTable& table);

struct ToJson {
  Json operator()(bool value) const { return value; }
  Json operator()(double value) const { return value; }
  Json operator()(const std::string& value) const { return value; }
  Json operator()(const TomlMoment& value) const { return Json{{"$time", value.text}}; }
  Json operator()(const TomlTable& value) const { return json_of(value); }
  Json operator()(const TomlArray& value) const {
    Json list = Json::array();
    for (const TomlValue& each : value) list.push_back(std::visit(*this, each.held));
    return list;
  }
};

Json json_of(const TomlTable& table) {
  Json object = Json::object();
  for (const TomlEntry& entry : table.entries) {
    object[entry.key] = std::visit(ToJson{}, entry.value.held);
  }
  return object;
}

}  // namespace

Parsed<std::string> json_of_toml(std::string_view text) {
  Parsed<TomlTable> reading = read_toml(text);
  if (!reading.ok()) return {std::nullopt, std::move(reading.diagnostics)};
  // What is no Unicode is shown by a mark in its place: the page is to see it, not to fail.
  return {json_of(with_plain_values(std::move(*reading.value)))
              .dump(-1, ' ', false, Json::error_handler_t::replace),
          std::move(reading.diagnostics)};
}

}  // namespace slabtide
