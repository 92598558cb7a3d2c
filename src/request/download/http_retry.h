#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "http.h"
#include "slabtide/core/civil_time.h"

namespace slabtide {

/// How often and how long to try a server that is busy or broken for the moment (status 429 or
/// 500 and over). The pause doubles from one try to the next.
struct Patience {
  int max_tries = 4;
  double first_pause_s = 2.0;
  /// A server that asks for more is left alone.
  double longest_pause_s = 60.0;
};

/// The world outside, so that tests need not wait.
struct Surroundings {
  std::function<UtcTime()> now;
  std::function<void(double seconds)> sleep;
  /// Tells the user about a pause.
  std::function<void(const std::string& line)> say;
};

/// The seconds that a Retry-After header asks for (RFC 9110, section 10.2.3: seconds, or a date
/// in any of the three forms); empty where it is neither, or nothing that is still to come.
std::optional<double> retry_after_s(std::string_view header, UtcTime now);

/// `get` with retries. Between tries it waits as Retry-After asks, else by `patience`. The last
/// answer is given back whatever its status; a failure is not tried again.
HttpGet with_retries(HttpGet get, Patience patience, Surroundings surroundings);

}  // namespace slabtide
