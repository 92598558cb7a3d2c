#pragma once

#include <cstddef>
#include <functional>
#include <string>

#include "request/download/http.h"
#include "slabtide/core/files.h"

namespace slabtide {

struct HttpOptions {
  std::string user_agent = "slabtide";
  double connect_limit_s = 10.0;
  double total_limit_s = 60.0;  ///< redirects included
  /// A transfer slower than so many bytes a second for so long is given up.
  long slow_bytes_per_s = 50;
  long slow_for_s = 20;
  std::size_t largest_bytes = largest_input_bytes;  ///< unpacked
  std::size_t largest_header_bytes = 64 * 1024;     ///< of one answer, all lines
  int max_redirects = 5;
  /// Told the bytes so far, now and then; may be empty.
  std::function<void(std::size_t bytes)> progress;
};

/// Gets `url` by GET over http or https, the server's certificate checked, following redirects
/// as may_redirect allows: to the same server. Retries nothing.
HttpResult http_get(const std::string& url, const HttpOptions& options);

}  // namespace slabtide
