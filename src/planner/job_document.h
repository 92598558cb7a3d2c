#pragma once

#include <string>
#include <string_view>

#include "slabtide/core/diagnostic.h"

namespace slabtide {

/// Any TOML document as JSON, for the page to edit: its tables as objects, in the order of the
/// file. Dates and times, which JSON has not, become `{"$time": "2026-05-14"}`, written as TOML
/// writes them; a number that is not finite becomes null; what is typed as people write it has its
/// plain form (`with_plain_values`). Refused is what `read_toml` refuses.
Parsed<std::string> json_of_toml(std::string_view text);

}  // namespace slabtide
