#pragma once

#include <functional>
#include <map>
#include <string>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/files.h"
#include "slabtide/job/reading/read_job.h"

namespace slabtide {

/// Where a request finds the texts it names: on disk for the commands, in memory for other front
/// ends.
struct Sources {
  std::function<bool(const std::string& path)> is_missing;
  std::function<FileText(const std::string& path)> read;
  TimeZoneLoader time_zone;
  std::function<UtcTime()> now;
};

/// Texts held in memory, by path; `now` is used as the current time.
Sources sources_in_memory(std::map<std::string, std::string> texts, TimeZoneLoader time_zone,
                          UtcTime now);

}  // namespace slabtide
