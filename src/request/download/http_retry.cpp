#include "http_retry.h"

#include <curl/curl.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "core/text.h"
#include "curl_function.h"

namespace slabtide {
namespace {

constexpr long too_many_requests = 429;
constexpr long first_server_fault = 500;
constexpr double pause_growth = 2.0;
/// Longer than any server asks for; limits absurd figures so that sums stay in range.
constexpr double longest_asked_s = 1.0e6;

bool is_passing(const HttpResult& result) {
  const auto* const reply = std::get_if<HttpReply>(&result);
  return reply != nullptr &&
         (reply->status == too_many_requests || reply->status >= first_server_fault);
}

/// A wait of zero or less does not say how long to wait.
std::optional<double> still_to_come(double wait_s) {
  if (!(wait_s > 0.0)) return std::nullopt;
  return std::min(wait_s, longest_asked_s);
}

}  // namespace

std::optional<double> retry_after_s(std::string_view header, UtcTime now) {
  const bool is_count = !header.empty() && header.find_first_not_of("0123456789") == header.npos;
  if (is_count) return still_to_come(parse_number(header).value_or(longest_asked_s));
  const auto parse_date = curl_function<decltype(curl_getdate)>("curl_getdate");
  const std::time_t at = parse_date(std::string{header}.c_str(), nullptr);
  if (at < 0) return std::nullopt;
  const UtcTime epoch{Date{1970, 1, 1}};
  const double wait_s = static_cast<double>(at) - seconds_between(epoch, now);
  return still_to_come(wait_s);
}

HttpGet with_retries(HttpGet get, Patience patience, Surroundings surroundings) {
  return [=, get = std::move(get), surroundings = std::move(surroundings)](const std::string& url) {
    HttpResult result = get(url);
    double pause_s = patience.first_pause_s;
    for (int tries = 1; tries < patience.max_tries && is_passing(result); ++tries) {
      const HttpReply& reply = std::get<HttpReply>(result);
      const double wait_s = retry_after_s(reply.retry_after, surroundings.now()).value_or(pause_s);
      if (wait_s > patience.longest_pause_s) return result;
      surroundings.say(fmt::format("The server is busy (status {}): trying again in {:.0f} s.",
                                   reply.status, std::ceil(wait_s)));
      surroundings.sleep(wait_s);
      pause_s = std::min(pause_s * pause_growth, patience.longest_pause_s);
      result = get(url);
    }
    return result;
  };
}

}  // namespace slabtide
