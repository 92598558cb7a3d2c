#pragma once

#include <optional>
#include <string>
#include <vector>

namespace slabtide {

/// A job to be planned, and what takes the place of what it says itself. Paths are those of its
/// Sources; the other texts are as a user types them.
struct JobRequest {
  std::string path;
  std::optional<std::string> forecast = std::nullopt;  ///< path; else what the job names
  std::optional<std::string> practice = std::nullopt;  ///< path; else the usual practice
  std::optional<std::string> book = std::nullopt;      ///< path; else mix-book.toml beside the job
  std::optional<std::string> units = std::nullopt;     ///< "us" or "si"; else the job's
  /// Names of zones in the order of placing; one entry alone may hold them all, with commas.
  std::vector<std::string> order = {};
  std::optional<std::string> now = std::nullopt;  ///< "2026-05-13T18:00"; else Sources::now
};

}  // namespace slabtide
