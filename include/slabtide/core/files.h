#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace slabtide {

/// A failed file operation, in words for the user.
struct FileError {
  std::string message;
  std::string next_step;
};

struct FileText {
  std::optional<std::string> text;
  FileError error;
};

inline constexpr std::size_t largest_input_bytes = std::size_t{8} * 1024 * 1024;

/// The whole file; an error where it cannot be read, is not a regular file or is over
/// `limit_bytes` (seen before it is read).
FileText read_file(const std::filesystem::path& path,
                   std::size_t limit_bytes = largest_input_bytes);

/// Writes beside `path` and renames over it, so that `path` holds the old text or the new
/// one, never a part. Follows a symbolic link and keeps an existing file's permissions.
/// A terminal, pipe or device is written to directly. Empty result: done.
std::optional<FileError> replace_file(const std::filesystem::path& path, std::string_view text);

}  // namespace slabtide
