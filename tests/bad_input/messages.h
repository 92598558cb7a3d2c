#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

#include "slabtide/core/diagnostic.h"

// Inputs that are wrong in one way, or in a few; beside each stands, in a .txt, the whole message
// that the user sees. SLABTIDE_UPDATE_GOLDEN=1 (tools/update-golden) rewrites the messages.

namespace slabtide::test {

/// What a reader makes of an input.
struct Told {
  std::string message;
  bool accepted = false;
};

/// By the input's file name and its content.
using Teller = std::function<Told(const std::string& name, const std::string& text)>;

/// Holds every file of this ending, of which there are at least so many, against the message
/// beside it: a doctest check. Files named warning_ are accepted all the same.
void check_messages(std::string_view ending, std::size_t at_least, const Teller& tell);

template <class T>
Told told(const Parsed<T>& reading, const std::string& name, const std::string& text) {
  return {render_all(reading.diagnostics, name, text), reading.ok()};
}

}  // namespace slabtide::test
