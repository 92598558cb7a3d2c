#pragma once

#include <string_view>

#include "slabtide/core/diagnostic.h"
#include "slabtide/core/time_zone.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Reads a job file's text (TOML 1.0). Every finding carries its line and column; all errors of a
/// file are collected, not only the first. An unknown key is an error that suggests the nearest
/// known key. `value` is present only if there is no error. The file format is documented in
/// data/starter.toml.
Parsed<Job> read_job(std::string_view text, const TimeZoneLoader& load_time_zone);

/// The same, with the system's time zones.
Parsed<Job> read_job(std::string_view text);

}  // namespace slabtide
