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

std::string json_text(const Json& document) {
  constexpr int indent = 2;
  return document.dump(indent) + "\n";
}

}  // namespace slabtide
