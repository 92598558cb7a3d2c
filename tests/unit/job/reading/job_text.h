#pragma once

#include <string>
#include <string_view>

namespace slabtide::test {

/// A whole job file in US units, in which tests replace parts.
std::string plain_job();

/// `plain_job` with the first `from` replaced by `to`. Error: std::invalid_argument if it does not
/// contain `from`.
std::string job_with(std::string_view from, std::string_view to);

/// `text` with the first `from` replaced by `to`; error as above.
std::string replaced(std::string text, std::string_view from, std::string_view to);

}  // namespace slabtide::test
