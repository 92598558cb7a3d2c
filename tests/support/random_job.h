#pragma once

#include <cstdint>
#include <string>

#include "support/byte_source.h"

// Whole jobs put together from valid and, in one of four, nearly valid pieces: for the fuzzer and
// for properties that must hold for any job.

namespace slabtide::test {

/// The name that a job made here gives its forecast's file.
inline constexpr const char* random_forecast_name = "forecast.csv";

/// A job file and the table it may name as its weather.
struct RandomJob {
  std::string toml;
  std::string forecast_csv;
};

/// The same for the same bytes.
RandomJob random_job(ByteSource& bytes);

/// What the job may be made of.
struct RandomJobKind {
  bool near_valid = false;     ///< one piece or another is out of range, of another type or missing
  bool typed_weather = false;  ///< never a forecast's file
};
RandomJob random_job(ByteSource& bytes, const RandomJobKind& kind);

/// The job's text alone, its day typed by high and low, all of it within what a job file may say;
/// only shapes and times may still conflict with one another.
std::string random_job_toml(ByteSource& bytes);
std::string random_job_toml(std::uint64_t seed);

/// A table of hours about the day: US or metric, one to six hours apart, some cells empty.
std::string random_forecast_csv(ByteSource& bytes, const std::string& date);

}  // namespace slabtide::test
