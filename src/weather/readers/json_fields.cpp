#include "json_fields.h"

#include <fmt/format.h>

#include "forecast_time.h"

namespace slabtide {

const JsonValue* member_of(const JsonValue& object, std::string_view key, JsonValue::Kind wanted,
                           std::string_view path, Findings& findings) {
  const JsonValue* const member = object.find(key);
  if (member == nullptr || member->is(JsonValue::Kind::null)) return nullptr;
  if (member->is(wanted)) return member;
  findings.error(member->where, joined_path(path, key),
                 fmt::format("got {}, expected {}", kind_name(member->kind), kind_name(wanted)));
  return nullptr;
}

const JsonValue* needed_member_of(const JsonValue& object, std::string_view key,
                                  JsonValue::Kind wanted, std::string_view path,
                                  Findings& findings) {
  const JsonValue* const member = object.find(key);
  if (member != nullptr && !member->is(JsonValue::Kind::null))
    return member_of(object, key, wanted, path, findings);
  findings.error(object.where, joined_path(path, key),
                 fmt::format("missing, expected {}", kind_name(wanted)));
  return nullptr;
}

std::optional<UtcTime> instant_member_of(const JsonValue& object, std::string_view key,
                                         std::string_view path, Findings& findings) {
  const JsonValue* const text = member_of(object, key, JsonValue::Kind::text, path, findings);
  if (text == nullptr) return std::nullopt;
  const std::optional<UtcTime> instant = instant_with_offset(text->text);
  if (!instant) {
    findings.error(text->where, joined_path(path, key),
                   fmt::format("{} is not a time with an offset, such as 2026-05-14T08:00-05:00",
                               in_quotes(text->text)));
  }
  return instant;
}

std::string joined_path(std::string_view path, std::string_view key) {
  return path.empty() ? std::string{key} : fmt::format("{}.{}", path, key);
}

std::string indexed_path(std::string_view path, std::size_t index) {
  return fmt::format("{}[{}]", path, index);
}

}  // namespace slabtide
