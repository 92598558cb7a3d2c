#pragma once

#include <string>
#include <string_view>

namespace slabtide::test {

/// The values of a JSON document at the pointers (RFC 6901) at the start of the lines of `fields`:
/// the same lines, each with the value found; a list or object is shown by its size, and a pointer
/// to nothing is marked as such. Lines that begin with # and empty lines are kept. Error:
/// std::invalid_argument if the document is not JSON.
std::string json_fields(std::string_view document, std::string_view fields);

}  // namespace slabtide::test
