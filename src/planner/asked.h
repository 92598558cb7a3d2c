#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "slabtide/core/diagnostic.h"
#include "slabtide/core/time_zone.h"
#include "slabtide/request/plan/job_request.h"
#include "slabtide/request/plan/sources.h"

namespace slabtide {

/// A request of the planner's page, read; what is missing in it or of another kind throws.
struct Asked {
  const nlohmann::ordered_json& json;
  const TimeZoneLoader& time_zones;

  std::string text(const char* key) const;
  std::string text_or_empty(const char* key) const;
  std::map<std::string, std::string> texts() const;
  std::string job_text() const;
  /// The text of this name, empty where none was sent.
  std::string text_of(const std::string& name) const;

  JobRequest request() const;
  Sources sources() const;
  /// `draws`, or `usual` where the request leaves it out.
  std::size_t draws(std::size_t usual) const;
};

nlohmann::ordered_json findings_of(const std::vector<Diagnostic>& diagnostics);

/// The answer that it cannot be done, for these reasons.
nlohmann::ordered_json refused(const std::vector<Diagnostic>& diagnostics);
nlohmann::ordered_json refused(const std::string& message, const std::string& next,
                               const std::string& key = {});

}  // namespace slabtide
