#pragma once

#include <string>

namespace slabtide {

/// A failed file operation, in words for the user.
struct FileError {
  std::string message;
  std::string next_step;
};

}  // namespace slabtide
