#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

#include "slabtide/core/diagnostic.h"

// Wrong inputs and the whole message that the user sees: edits of a base in tables (cases.h), or,
// for input that is not text or is odd throughout, a file with its message beside it in a .txt.
// SLABTIDE_UPDATE_GOLDEN=1 (tools/update-golden) rewrites the messages of both.

namespace slabtide::test {

/// What a reader reports about an input.
struct Told {
  std::string message;
  bool accepted = false;
};

/// Reads an input, given its file name and content.
using Teller = std::function<Told(const std::string& name, const std::string& text)>;

/// Checks, for every input of this ending (at least `min_count` of them), the report against the
/// expected message. Inputs named warning_ must be accepted all the same, and no two inputs may be
/// equal.
void check_messages(std::string_view ending, std::size_t min_count, const Teller& tell);

template <class T>
Told told(const Parsed<T>& reading, const std::string& name, const std::string& text) {
  return {render_all(reading.diagnostics, name, text), reading.ok()};
}

}  // namespace slabtide::test
