#pragma once

#include <string>
#include <string_view>

namespace slabtide::test {

/// What a JSON document holds at the pointers (RFC 6901) that stand first on the lines of `fields`:
/// the lines again, each with the value found, a list or an object by how many it holds. A pointer
/// to nothing says so. Lines that begin with # and empty ones stay.
/// Error: std::invalid_argument where the document is no JSON.
std::string json_fields(std::string_view document, std::string_view fields);

}  // namespace slabtide::test
