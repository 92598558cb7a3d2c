#include "json_values.h"

#include <nlohmann/json.hpp>

#include "slabtide/core/version.h"

namespace slabtide {

Json json_time(const std::optional<UtcTime>& at, const Job& job) {
  return at ? Json(iso8601_minute(*at, job.site.time_zone)) : Json(nullptr);
}

Json json_maybe(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }

Json json_maybe(const std::optional<int>& value) { return value ? Json(*value) : Json(nullptr); }

Json json_maybe(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

Json json_document() { return {{"slabtide", {{"version", version()}, {"schema", 1}}}}; }

namespace {

bool is_absent(const Json& value) {
  return value.is_null() || (value.is_string() && value.get_ref<const std::string&>().empty());
}

void leave_out_absent(Json& value) {
  if (value.is_object()) {
    for (auto member = value.begin(); member != value.end();) {
      if (is_absent(*member)) {
        member = value.erase(member);
      } else {
        leave_out_absent(*member++);
      }
    }
  } else if (value.is_array()) {
    for (Json& item : value) leave_out_absent(item);
  }
}

}  // namespace

std::string json_text(Json document) {
  constexpr int indent = 2;
  leave_out_absent(document);
  return document.dump(indent) + "\n";
}

}  // namespace slabtide
