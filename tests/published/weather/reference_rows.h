#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace slabtide::testing {

/// A printed reference: rows of fields, the header left out.
using ReferenceRows = std::vector<std::vector<std::string>>;

/// The rows that tests/npm/<name>.mjs printed before this test ran; empty where they are
/// missing.
ReferenceRows reference_rows(std::string_view name);

}  // namespace slabtide::testing
