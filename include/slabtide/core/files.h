#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/file_error.h"

namespace slabtide {

/// A file's text, or why there is none.
struct FileText {
  std::optional<std::string> text;
  FileError error;
};

/// The most that is read of any input (ours).
inline constexpr std::size_t largest_input_bytes = std::size_t{8} * 1024 * 1024;

/// The whole file; an error where it cannot be read, is not a regular file or is over
/// `limit_bytes` (seen before it is read).
FileText read_file(const std::filesystem::path& path,
                   std::size_t limit_bytes = largest_input_bytes);

/// Whether there is nothing of that name. What cannot be told counts as there: reading it says why.
bool is_missing(const std::filesystem::path& path);

/// What tells one file from another, whatever path leads to it: device and number, or, where there
/// is no such file, those of its folder and its name.
struct FileIdentity {
  std::uintmax_t device = 0;
  std::uintmax_t number = 0;
  std::string name;

  auto operator<=>(const FileIdentity&) const = default;  // NOLINT(modernize-use-nullptr): no 0
};

/// Follows symbolic links, those to what is not there yet too.
FileIdentity identity_of(const std::filesystem::path& path);

/// Writes beside `path` and renames over it, so that `path` holds the old text or the new
/// one, never a part. Follows a symbolic link and keeps an existing file's permissions and, as far
/// as the system lets, its owner. A terminal, pipe or device is written to directly; a pipe that
/// nobody reads from is an error. Empty result: done.
std::optional<FileError> replace_file(const std::filesystem::path& path, std::string_view text);

/// What to put at the end of a file that grows line by line.
struct NewLine {
  std::string line;     ///< with its line break
  std::string heading;  ///< goes before it where the file is new or empty
  /// Ends a last line that has no line break: one that a crash cut short.
  std::string unfinished_mark;
};

/// What became of `append_line`.
struct Appended {
  std::optional<FileError> error;
  bool ended_unfinished = false;  ///< there was such a line, and it bears the mark now
};

/// Adds a line to a file, made where there is none, and waits until it is on the disk. What is
/// there stays as it is whatever happens: a crash leaves at most a last line without an end, and
/// where the disk is full nothing is added. Several at once wait for each other, and all land.
/// Follows a symbolic link.
Appended append_line(const std::filesystem::path& path, const NewLine& added);

/// Decides what to add by all that the file holds; empty for nothing.
using LineChoice = std::function<std::optional<NewLine>(std::string_view before)>;

/// The same where the line depends on what is there: nobody else adds one between the choice and
/// the writing. A file that was not there and gets nothing is not there afterwards.
Appended append_line(const std::filesystem::path& path, const LineChoice& choose);

}  // namespace slabtide
