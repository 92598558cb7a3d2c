#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "http.h"
#include "slabtide/core/civil_time.h"

namespace slabtide {

/// How often and how long to retry a server that is temporarily busy or broken (status 429 or 500
/// and over). The pause doubles from one try to the next.
struct Patience {
  int max_tries = 4;
  double first_pause_s = 2.0;
  /// If a server asks for a longer pause, there are no more tries.
  double longest_pause_s = 60.0;
};

/// The outside world, replaceable so that tests need not wait.
struct Surroundings {
  std::function<UtcTime()> now;
  std::function<void(double seconds)> sleep;
  /// Tells the user about a pause.
  std::function<void(const std::string& line)> say;
};

/// The seconds that a Retry-After header asks for (RFC 9110, section 10.2.3: seconds, or a date
/// in any of the three forms); empty if it is neither, or not in the future.
std::optional<double> retry_after_s(std::string_view header, UtcTime now);

/// `get` with retries. Between tries it waits as Retry-After asks, else as `patience` says. The
/// last answer is returned whatever its status; a failure without an answer is not retried.
HttpGet with_retries(HttpGet get, Patience patience, Surroundings surroundings);

}  // namespace slabtide
