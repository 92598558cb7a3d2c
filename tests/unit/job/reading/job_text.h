#pragma once

#include <string>
#include <string_view>

#include "slabtide/job/model/job.h"

namespace slabtide::test {

/// A whole job file in US units, in which tests replace parts.
std::string plain_job();

/// `plain_job` with the first `from` replaced by `to`. Error: std::invalid_argument if it does not
/// contain `from`.
std::string job_with(std::string_view from, std::string_view to);

/// `text` with the first `from` replaced by `to`; error as above.
std::string replaced(std::string text, std::string_view from, std::string_view to);

/// The job of a text that can be read; fails the test if it cannot.
Job read(const std::string& text);

}  // namespace slabtide::test
