#pragma once

#include <string>
#include <string_view>

namespace slabtide {

/// What is wrong with a line of a file, and what to do.
struct TomlFault {
  std::string message;
  std::string next_step;
};

/// The parser's description of a fault in words of who writes the file.
TomlFault toml_fault(std::string_view description);

}  // namespace slabtide
