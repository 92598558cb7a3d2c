#pragma once

#include <cstdint>
#include <string>

#include "support/byte_source.h"

// Complete jobs made from valid and, in one of four, nearly valid pieces: for the fuzzer and for
// properties that must hold for any job.

namespace slabtide::test {

/// How many jobs a test plans, and from which seed on: `usual` and `first`, or what SLABTIDE_JOBS
/// and SLABTIDE_FIRST_JOB of the environment say.
std::uint64_t job_count(std::uint64_t usual);
std::uint64_t first_job(std::uint64_t first);

/// The file name that a generated job uses for its forecast.
inline constexpr const char* random_forecast_name = "forecast.csv";

/// A job file and the table it may name as its weather.
struct RandomJob {
  std::string toml;
  std::string forecast_csv;
};

/// The same bytes always give the same job.
RandomJob random_job(ByteSource& bytes);

/// What the job may contain.
struct RandomJobKind {
  bool near_valid = false;     ///< no forecast file
  bool typed_weather = false;  ///< never a forecast's file
};
RandomJob random_job(ByteSource& bytes, const RandomJobKind& kind);

/// Only the job's text, with weather typed as high and low and all values in range; shapes and
/// times may still conflict with one another.
std::string random_job_toml(ByteSource& bytes);
std::string random_job_toml(std::uint64_t seed);

/// A table of hours around the day: US or metric, one to six hours apart, with some empty cells.
std::string random_forecast_csv(ByteSource& bytes, const std::string& date);

}  // namespace slabtide::test
