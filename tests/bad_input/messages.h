#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

#include "slabtide/core/diagnostic.h"

// Inputs that are wrong in one way, or in a few, and the whole message that the user sees: edits of
// a base in tables (cases.h), or a file, where it is not text or all of it is odd, with its message
// beside it in a .txt. SLABTIDE_UPDATE_GOLDEN=1 (tools/update-golden) rewrites the messages of
// both.

namespace slabtide::test {

/// What a reader makes of an input.
struct Told {
  std::string message;
  bool accepted = false;
};

/// By the input's file name and its content.
using Teller = std::function<Told(const std::string& name, const std::string& text)>;

/// Holds what is told of every input of this ending, of which there are at least so many, against
/// the message expected: a doctest check. Inputs named warning_ are accepted all the same, and no
/// two are the same.
void check_messages(std::string_view ending, std::size_t min_count, const Teller& tell);

template <class T>
Told told(const Parsed<T>& reading, const std::string& name, const std::string& text) {
  return {render_all(reading.diagnostics, name, text), reading.ok()};
}

}  // namespace slabtide::test
