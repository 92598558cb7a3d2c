#pragma once

#include <optional>
#include <string>

#include <nlohmann/json_fwd.hpp>

#include "slabtide/job/model/job.h"

// What the JSON documents have alike.

namespace slabtide {

using Json = nlohmann::ordered_json;

/// RFC 3339, to the minute; null, which `json_text` leaves out, for a time that does not come.
Json json_time(const std::optional<UtcTime>& at, const Job& job);

/// The value, or null; null for an empty text too.
Json json_maybe(const std::optional<double>& value);
Json json_maybe(const std::optional<int>& value);
Json json_maybe(const std::string& text);

/// A document that says which program and which form made it, and nothing else yet.
Json json_document();

/// Indented, with a newline at its end. What is absent is left out: a member that is null or an
/// empty text.
std::string json_text(Json document);

}  // namespace slabtide
