#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "slabtide/core/diagnostic.h"

namespace slabtide {

/// `text` in single quotes for a message, cut after forty characters.
std::string in_quotes(std::string_view text);

/// Collects a reader's findings; reading stops after fifty errors.
class Findings {
 public:
  void error(SourcePosition where, std::string key, std::string message,
             std::string next_step = {});
  void warning(SourcePosition where, std::string key, std::string message,
               std::string next_step = {});
  void add(Diagnostic diagnostic);

  /// True when there are so many errors that reading should stop.
  bool full() const { return errors_ >= max_errors; }
  bool has_error() const { return errors_ > 0; }
  std::vector<Diagnostic> take() { return std::move(diagnostics_); }

 private:
  static constexpr std::size_t max_errors = 50;

  std::vector<Diagnostic> diagnostics_;
  std::size_t errors_ = 0;
};

}  // namespace slabtide
