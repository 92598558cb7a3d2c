#include "http_client.h"

#include <curl/curl.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "request/download/curl_function.h"
#include "request/download/url.h"

namespace slabtide {
namespace {

constexpr double ms_per_s = 1000.0;
constexpr const char* accepted = "Accept: application/geo+json, application/json;q=0.9, */*;q=0.1";

struct TransferFunctions {
  decltype(curl_global_init)* start = curl_function<decltype(curl_global_init)>("curl_global_init");
  decltype(curl_easy_init)* open = curl_function<decltype(curl_easy_init)>("curl_easy_init");
  decltype(curl_easy_setopt)* set = curl_function<decltype(curl_easy_setopt)>("curl_easy_setopt");
  decltype(curl_easy_getinfo)* info =
      curl_function<decltype(curl_easy_getinfo)>("curl_easy_getinfo");
  decltype(curl_easy_perform)* perform =
      curl_function<decltype(curl_easy_perform)>("curl_easy_perform");
  decltype(curl_easy_strerror)* words =
      curl_function<decltype(curl_easy_strerror)>("curl_easy_strerror");
  decltype(curl_easy_cleanup)* close =
      curl_function<decltype(curl_easy_cleanup)>("curl_easy_cleanup");
  decltype(curl_slist_append)* append =
      curl_function<decltype(curl_slist_append)>("curl_slist_append");
  decltype(curl_slist_free_all)* free_list =
      curl_function<decltype(curl_slist_free_all)>("curl_slist_free_all");
};

const TransferFunctions& curl() {
  static const TransferFunctions functions;
  return functions;
}

/// Initialises the library's global state once.
void start_library() {
  static const CURLcode started = curl().start(CURL_GLOBAL_DEFAULT);
  if (started != CURLE_OK) throw std::runtime_error{"the network library does not start"};
}

struct EasyCloser {
  void operator()(CURL* handle) const { curl().close(handle); }
};
struct ListCloser {
  void operator()(curl_slist* list) const { curl().free_list(list); }
};

std::string lower_case(std::string_view text) {
  std::string result{text};
  std::transform(result.begin(), result.end(), result.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  return result;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\n";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

/// Collects one answer.
struct Collected {
  HttpReply reply;
  std::size_t largest_bytes = 0;
  bool too_large = false;
  std::size_t largest_header_bytes = 0;
  std::size_t header_bytes = 0;
  const std::function<void(std::size_t)>* progress = nullptr;
};

std::size_t take_body(char* data, std::size_t size, std::size_t count, void* user) {
  Collected& collected = *static_cast<Collected*>(user);
  const std::size_t bytes = size * count;
  collected.too_large = bytes > collected.largest_bytes - collected.reply.body.size();
  if (collected.too_large) return 0;  // fewer than were given: aborts the transfer
  collected.reply.body.append(data, bytes);
  return bytes;
}

std::size_t take_header(char* data, std::size_t size, std::size_t count, void* user) {
  constexpr std::string_view name = "retry-after:";
  const std::string_view line{data, size * count};
  Collected& collected = *static_cast<Collected*>(user);
  collected.header_bytes += line.size();
  if (collected.header_bytes > collected.largest_header_bytes) return 0;  // aborts the transfer
  if (lower_case(line.substr(0, name.size())) == name)
    collected.reply.retry_after = trimmed(line.substr(name.size()));
  return line.size();
}

int take_progress(void* user, curl_off_t /*total*/, curl_off_t so_far, curl_off_t /*up_total*/,
                  curl_off_t /*up*/) {
  const Collected& collected = *static_cast<const Collected*>(user);
  if (*collected.progress) (*collected.progress)(static_cast<std::size_t>(so_far));
  return 0;
}

/// "the server forecasts.example"; the address itself if it has no host.
std::string server_of(const std::string& url) {
  const std::optional<WebAddress> address = web_address(url);
  return address ? fmt::format("the server {}", address->host) : url;
}

constexpr std::string_view network_advice =
    "check the network and run it again; a plan from the old forecast or typed weather needs none";
constexpr std::string_view later_advice = "run it again in a while";

struct Words {
  CURLcode code;
  std::string_view what;  ///< after the server's name
  std::string_view next_step;
};

/// The library's error code for a header line over its own limit.
constexpr CURLcode header_too_long = CURLE_OUT_OF_MEMORY;

constexpr std::array<Words, 14> failures{{
    {CURLE_COULDNT_RESOLVE_HOST, "is not found", network_advice},
    {CURLE_COULDNT_RESOLVE_PROXY, "cannot be reached: its proxy is not found", network_advice},
    {CURLE_COULDNT_CONNECT, "cannot be reached", network_advice},
    {CURLE_OPERATION_TIMEDOUT, "takes too long to answer", later_advice},
    {CURLE_PEER_FAILED_VERIFICATION,
     "does not prove who it is: its certificate is not accepted, so nothing was taken from it",
     "check this computer's date and its ca-certificates package"},
    {CURLE_SSL_CONNECT_ERROR, "does not speak https as it should",
     "check the address; a network's log-in page may be in the way"},
    {CURLE_SSL_CACERT_BADFILE, "cannot be checked: the certificates of this computer are missing",
     "install its ca-certificates package"},
    {CURLE_GOT_NOTHING, "broke off the connection", later_advice},
    {CURLE_PARTIAL_FILE, "broke off the connection", later_advice},
    {CURLE_RECV_ERROR, "broke off the connection", later_advice},
    {CURLE_WEIRD_SERVER_REPLY, "gives an answer that is not http", "check the address"},
    {CURLE_UNSUPPORTED_PROTOCOL, "gives an answer that is not http", "check the address"},
    {header_too_long, "sends a header too long for any forecast", "check the address"},
    {CURLE_BAD_CONTENT_ENCODING, "gives an answer that cannot be unpacked", later_advice},
}};

HttpFailure failure_of(CURLcode code, const std::string& url) {
  const auto* const words = std::find_if(failures.begin(), failures.end(),
                                         [=](const Words& row) { return row.code == code; });
  if (words == failures.end()) {
    return {fmt::format("{}: {}", server_of(url), curl().words(code)), std::string{later_advice}};
  }
  return {fmt::format("{} {}", server_of(url), words->what), std::string{words->next_step}};
}

/// One connection, reused for redirects.
class Client {
 public:
  explicit Client(const HttpOptions& options)
      : options_(options), headers_(curl().append(nullptr, accepted)) {
    start_library();
    handle_.reset(curl().open());
    if (!handle_ || !headers_) throw std::runtime_error{"the network library does not start"};
    set_limits();
    set_manners();
  }

  HttpResult get(std::string url) {
    double left_s = options_.total_limit_s;
    for (int redirects = 0; redirects <= options_.max_redirects; ++redirects) {
      HttpResult result = get_once(url, left_s);
      left_s -= info<double>(CURLINFO_TOTAL_TIME);
      const char* const next = info<const char*>(CURLINFO_REDIRECT_URL);
      if (std::holds_alternative<HttpFailure>(result) || next == nullptr) return result;
      if (!may_redirect(url, next)) {
        return HttpFailure{fmt::format("{} sends on to {}, which is not followed", server_of(url),
                                       server_of(next)),
                           "check the address"};
      }
      url = next;
    }
    return HttpFailure{
        fmt::format("{} sends on and on, over {} times", server_of(url), options_.max_redirects),
        "check the address"};
  }

 private:
  template <class T>
  void set(CURLoption option, T value) {
    if (curl().set(handle_.get(), option, value) != CURLE_OK)
      throw std::runtime_error{"the network library lacks an option"};
  }

  template <class T>
  T info(CURLINFO which) const {
    T value{};
    curl().info(handle_.get(), which, &value);
    return value;
  }

  void set_limits() {
    set(CURLOPT_CONNECTTIMEOUT_MS, static_cast<long>(options_.connect_limit_s * ms_per_s));
    set(CURLOPT_LOW_SPEED_LIMIT, options_.slow_bytes_per_s);
    set(CURLOPT_LOW_SPEED_TIME, options_.slow_for_s);
    set(CURLOPT_MAXFILESIZE_LARGE, static_cast<curl_off_t>(options_.largest_bytes));
  }

  void set_manners() {
    set(CURLOPT_NOSIGNAL, 1L);
    set(CURLOPT_PROTOCOLS_STR, "http,https");
    set(CURLOPT_FOLLOWLOCATION, 0L);  // redirects are followed below, as may_redirect allows
    set(CURLOPT_SSL_VERIFYPEER, 1L);
    set(CURLOPT_SSL_VERIFYHOST, 2L);
    set(CURLOPT_USERAGENT, options_.user_agent.c_str());
    set(CURLOPT_HTTPHEADER, headers_.get());
    set(CURLOPT_ACCEPT_ENCODING, "");  // any encoding that the library can decompress
    set(CURLOPT_WRITEFUNCTION, &take_body);
    set(CURLOPT_HEADERFUNCTION, &take_header);
    set(CURLOPT_XFERINFOFUNCTION, &take_progress);
    set(CURLOPT_NOPROGRESS, 0L);
  }

  HttpResult get_once(const std::string& url, double left_s) {
    Collected collected{.reply = {},
                        .largest_bytes = options_.largest_bytes,
                        .too_large = false,
                        .largest_header_bytes = options_.largest_header_bytes,
                        .header_bytes = 0,
                        .progress = &options_.progress};
    set(CURLOPT_URL, url.c_str());
    set(CURLOPT_TIMEOUT_MS, std::max(static_cast<long>(left_s * ms_per_s), 1L));
    set(CURLOPT_WRITEDATA, &collected);
    set(CURLOPT_HEADERDATA, &collected);
    set(CURLOPT_XFERINFODATA, &collected);
    const CURLcode code = curl().perform(handle_.get());
    if (collected.too_large || code == CURLE_FILESIZE_EXCEEDED) return too_large(url);
    if (code == CURLE_WRITE_ERROR && collected.header_bytes > options_.largest_header_bytes)
      return failure_of(header_too_long, url);
    if (code != CURLE_OK) return failure_of(code, url);
    collected.reply.status = info<long>(CURLINFO_RESPONSE_CODE);
    const char* const type = info<const char*>(CURLINFO_CONTENT_TYPE);
    if (type != nullptr) collected.reply.content_type = type;
    return std::move(collected.reply);
  }

  HttpFailure too_large(const std::string& url) const {
    return {fmt::format("{} sends more than {} bytes, which is no forecast", server_of(url),
                        options_.largest_bytes),
            "check the address"};
  }

  const HttpOptions& options_;
  std::unique_ptr<curl_slist, ListCloser> headers_;
  std::unique_ptr<CURL, EasyCloser> handle_;
};

}  // namespace

HttpResult http_get(const std::string& url, const HttpOptions& options) {
  if (!web_address(url)) {
    return HttpFailure{fmt::format("{} is not a web address", url),
                       "it begins with https:// or http://"};
  }
  return Client{options}.get(url);
}

}  // namespace slabtide
