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

/// A file's text, or why it could not be read.
struct FileText {
  std::optional<std::string> text;
  FileError error;
};

/// The most that is read of any input (our choice).
inline constexpr std::size_t largest_input_bytes = std::size_t{8} * 1024 * 1024;

/// The whole file. An error if it cannot be read, is not a regular file, or is larger than
/// `limit_bytes` (checked before reading).
FileText read_file(const std::filesystem::path& path,
                   std::size_t limit_bytes = largest_input_bytes);

/// Whether there is nothing of that name. If that cannot be determined the file counts as present:
/// reading it then reports why.
bool is_missing(const std::filesystem::path& path);

/// Identifies a file whatever path leads to it: by device and inode number or, if the file does not
/// exist, by those of its folder plus its name.
struct FileIdentity {
  std::uintmax_t device = 0;
  std::uintmax_t number = 0;
  std::string name;

  auto operator<=>(const FileIdentity&) const = default;  // NOLINT(modernize-use-nullptr): no 0
};

/// Follows symbolic links, including links to a file that does not exist yet.
FileIdentity identity_of(const std::filesystem::path& path);

/// Writes a new file beside `path` and renames it over `path`, so that `path` always holds the old
/// text or the new one, never a part. Follows a symbolic link and keeps an existing file's
/// permissions and, as far as the system allows, its owner. A terminal, pipe or device is written
/// to directly; a pipe that nobody reads from is an error. Returns nothing when done.
std::optional<FileError> replace_file(const std::filesystem::path& path, std::string_view text);

/// What to put at the end of a file that grows line by line.
struct NewLine {
  std::string line;     ///< with its line break
  std::string heading;  ///< written before the line if the file is new or empty
  /// Closes a last line that has no line break, which is a line that a crash cut short.
  std::string unfinished_mark;
};

/// The outcome of `append_line`.
struct Appended {
  std::optional<FileError> error;
  bool ended_unfinished = false;  ///< there was such a line; it now carries the mark
};

/// Appends a line to a file, creating it if needed, and waits until the line is on the disk. What
/// was there is never changed: a crash leaves at most a last line without a line break, and on a
/// full disk nothing is added. Concurrent callers wait for each other, and every line gets written.
/// Follows a symbolic link.
Appended append_line(const std::filesystem::path& path, const NewLine& added);

/// Chooses the line to add from the file's whole present text; empty adds nothing.
using LineChoice = std::function<std::optional<NewLine>(std::string_view before)>;

/// The same for a line that depends on the file's text: nobody else can append between the choice
/// and the write. A file that did not exist and gets no line is not created.
Appended append_line(const std::filesystem::path& path, const LineChoice& choose);

}  // namespace slabtide
