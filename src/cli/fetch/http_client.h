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
  double total_limit_s = 60.0;  ///< including redirects
  /// A transfer slower than this many bytes per second for this long is aborted.
  long slow_bytes_per_s = 50;
  long slow_for_s = 20;
  std::size_t largest_bytes = largest_input_bytes;  ///< after decompression
  std::size_t largest_header_bytes = 64 * 1024;     ///< all header lines of one answer
  int max_redirects = 5;
  /// Called now and then with the number of bytes received; may be empty.
  std::function<void(std::size_t bytes)> progress;
};

/// Gets `url` over http or https, checking the server's certificate and following redirects as
/// may_redirect allows: only to the same server. No retries.
HttpResult http_get(const std::string& url, const HttpOptions& options);

}  // namespace slabtide
