#include "url.h"

#include <curl/curl.h>

#include <algorithm>
#include <memory>

#include "curl_function.h"

namespace slabtide {
namespace {

struct UrlFunctions {
  decltype(curl_url)* make = curl_function<decltype(curl_url)>("curl_url");
  decltype(curl_url_set)* set = curl_function<decltype(curl_url_set)>("curl_url_set");
  decltype(curl_url_get)* get = curl_function<decltype(curl_url_get)>("curl_url_get");
  decltype(curl_url_cleanup)* close = curl_function<decltype(curl_url_cleanup)>("curl_url_cleanup");
  decltype(curl_free)* free = curl_function<decltype(curl_free)>("curl_free");
};

const UrlFunctions& curl() {
  static const UrlFunctions functions;
  return functions;
}

struct UrlCloser {
  void operator()(CURLU* url) const { curl().close(url); }
};
using UrlHandle = std::unique_ptr<CURLU, UrlCloser>;

/// The part of the address; empty if it has none.
std::string part_of(const UrlHandle& url, CURLUPart part, unsigned flags = 0) {
  char* text = nullptr;
  if (curl().get(url.get(), part, &text, flags) != CURLUE_OK) return {};
  const std::unique_ptr<char, void (*)(void*)> owner{text, curl().free};
  return text;
}

std::string lower_case(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  return text;
}

}  // namespace

std::optional<WebAddress> web_address(const std::string& url) {
  const UrlHandle parsed{curl().make()};
  if (!parsed || curl().set(parsed.get(), CURLUPART_URL, url.c_str(), 0) != CURLUE_OK)
    return std::nullopt;
  WebAddress address{.scheme = lower_case(part_of(parsed, CURLUPART_SCHEME)),
                     .host = lower_case(part_of(parsed, CURLUPART_HOST))};
  const bool is_web = address.scheme == "http" || address.scheme == "https";
  if (!is_web || address.host.empty() || !part_of(parsed, CURLUPART_USER).empty())
    return std::nullopt;
  const std::string port = part_of(parsed, CURLUPART_PORT, CURLU_NO_DEFAULT_PORT);
  if (!port.empty()) address.host.append(":").append(port);
  return address;
}

bool may_follow(const std::string& from, const std::string& to) {
  const std::optional<WebAddress> start = web_address(from);
  const std::optional<WebAddress> end = web_address(to);
  return start && end && !(start->scheme == "https" && end->scheme == "http");
}

bool may_redirect(const std::string& from, const std::string& to) {
  return may_follow(from, to) && web_address(from)->host == web_address(to)->host;
}

}  // namespace slabtide
