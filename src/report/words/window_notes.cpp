#include "window_notes.h"

#include <algorithm>

#include <fmt/format.h>

namespace slabtide {

namespace {

/// A note and the operations it applies to, in words.
struct SharedNote {
  std::string operations;
  std::string note;
};

}  // namespace

std::vector<std::string> window_notes(const PartPlan& part) {
  std::vector<SharedNote> shared;
  for (const OperationWindow& window : part.windows) {
    if (window.note.empty() || window.operation >= Operation::saw_dry) continue;
    const auto same =
        std::find_if(shared.begin(), shared.end(),
                     [&window](const SharedNote& other) { return other.note == window.note; });
    if (same == shared.end()) {
      shared.push_back({std::string(operation_words(window.operation)), window.note});
    } else {
      same->operations.append(", ").append(operation_words(window.operation));
    }
  }
  std::vector<std::string> notes;
  for (const SharedNote& one : shared) {
    notes.push_back(fmt::format("{}: {}", one.operations, one.note));
  }
  return notes;
}

}  // namespace slabtide
