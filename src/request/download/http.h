#pragma once

#include <functional>
#include <string>
#include <variant>

namespace slabtide {

/// A server's answer, whatever its status.
struct HttpReply {
  long status = 0;
  std::string body;
  std::string content_type;
  std::string retry_after;  ///< the header as received; empty if there is none
};

/// Why there was no answer, in words for the user.
struct HttpFailure {
  std::string message;
  std::string next_step;
};

using HttpResult = std::variant<HttpReply, HttpFailure>;

/// Fetches one address.
using HttpGet = std::function<HttpResult(const std::string& url)>;

}  // namespace slabtide
