#pragma once

#include <optional>
#include <string>

namespace slabtide {

/// The parts of a web address that decide whether it may be followed.
struct WebAddress {
  std::string scheme;  ///< "http" or "https"
  std::string host;    ///< lower case, with ":port" unless it is the scheme's default
};

/// Empty for anything but a complete http or https address, and for one with a user name.
std::optional<WebAddress> web_address(const std::string& url);

/// True if a document or reply from `from` may send the program to `to`: a web address, and never
/// from https to http. Whether its host can be trusted is checked separately.
bool may_follow(const std::string& from, const std::string& to);

/// True if a server at `from` may redirect a request to `to`: as above, and only to itself.
bool may_redirect(const std::string& from, const std::string& to);

}  // namespace slabtide
