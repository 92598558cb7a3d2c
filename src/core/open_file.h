#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <sys/types.h>

#include "slabtide/core/file_error.h"

// Shared by everything that opens files: the descriptor, wording of system errors, locks.

namespace slabtide {

/// Permissions of a new file, before the user's umask.
inline constexpr mode_t new_file_mode = 0666;

/// Closes the descriptor it holds.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() { close(); }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&&) = delete;

  [[nodiscard]] bool ok() const { return number_ >= 0; }
  [[nodiscard]] int number() const { return number_; }
  /// Gives it away: the caller closes.
  [[nodiscard]] int release() { return std::exchange(number_, -1); }
  /// 0 or an error number. On a network file system a full disk may be reported only here.
  int close();

 private:
  int number_;
};

/// The path in quotation marks, as a message shows it.
std::string quoted(const std::filesystem::path& path);

/// The folder that contains `path`.
std::filesystem::path folder_of(const std::filesystem::path& path);

/// Builds a message such as "cannot write "day.json": the disk is full", with what to do next.
FileError failure(std::string_view deed, const std::filesystem::path& path, std::string_view reason,
                  std::string next_step);
/// The same for a system error number.
FileError system_failure(std::string_view deed, const std::filesystem::path& path, int code);
/// For a path that is not a regular file.
FileError not_a_file(std::string_view deed, const std::filesystem::path& path, mode_t mode);

/// Where the symbolic links of `path` lead, whether or not that file exists; empty if they form a
/// loop.
std::optional<std::filesystem::path> link_target(std::filesystem::path path);

/// Writes the whole text. Returns 0 or an error number.
int write_all(int descriptor, std::string_view text);

/// Waits for an exclusive lock. On file systems without locks it returns at once. Returns 0 or an
/// error number.
int take_lock(int descriptor);

/// Whether the path still leads to the open file, which may have been replaced meanwhile.
bool is_still(int descriptor, const std::filesystem::path& path);

}  // namespace slabtide
