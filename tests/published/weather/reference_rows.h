#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace slabtide::testing {

/// A printed reference: rows of fields, without the header.
using ReferenceRows = std::vector<std::vector<std::string>>;

/// The rows that tests/npm/<name>.mjs printed before this test ran; empty if they are missing.
ReferenceRows reference_rows(std::string_view name);

}  // namespace slabtide::testing
