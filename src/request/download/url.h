#pragma once

#include <optional>
#include <string>

namespace slabtide {

/// The parts of a web address that decide whether it may be followed.
struct WebAddress {
  std::string scheme;  ///< "http" or "https"
  std::string host;    ///< lower case, with ":port" where it is not the scheme's own
};

/// Empty for anything that is not a whole http or https address, or that carries a user name.
std::optional<WebAddress> web_address(const std::string& url);

/// True where what a server at `from` says may lead the program on to `to`: a web address, and
/// never from https to http. Whether its host is to be trusted is another question.
bool may_follow(const std::string& from, const std::string& to);

/// True where a server at `from` may redirect a request to `to`: as above, and to itself only.
bool may_redirect(const std::string& from, const std::string& to);

}  // namespace slabtide
