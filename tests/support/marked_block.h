#pragma once

#include <optional>
#include <string>

namespace slabtide::test {

/// `text` with `block` between the lines `<!-- name -->` and `<!-- end of name -->`; empty if a
/// mark is missing.
inline std::optional<std::string> with_block(const std::string& text, const std::string& name,
                                             const std::string& block) {
  const std::string begin_mark = "<!-- " + name + " -->\n";
  const std::string end_mark = "<!-- end of " + name + " -->\n";
  const auto begin = text.find(begin_mark);
  const auto end = text.find(end_mark);
  if (begin == std::string::npos || end == std::string::npos || end < begin) return std::nullopt;
  return text.substr(0, begin + begin_mark.size()) + block + text.substr(end);
}

}  // namespace slabtide::test
