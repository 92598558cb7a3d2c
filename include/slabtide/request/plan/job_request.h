#pragma once

#include <optional>
#include <string>
#include <vector>

namespace slabtide {

/// A job to plan, and what replaces the job file's own settings. Paths are looked up in Sources;
/// the other texts are as a user types them.
struct JobRequest {
  std::string path;
  std::optional<std::string> forecast = std::nullopt;  ///< path; else the file that the job names
  std::optional<std::string> practice = std::nullopt;  ///< path; else the built-in practice
  std::optional<std::string> book = std::nullopt;      ///< path; else mix-book.toml beside the job
  std::optional<std::string> units = std::nullopt;     ///< "us" or "si"; else the job's units
  std::optional<std::string> clock = std::nullopt;     ///< "12" or "24"; else the job's
  /// Zone names in placing order; a single entry may hold all of them, separated by commas.
  std::vector<std::string> order = {};
  std::optional<std::string> now = std::nullopt;  ///< "2026-05-13 6:00 PM"; else Sources::now
};

}  // namespace slabtide
