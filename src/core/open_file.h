#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <sys/types.h>

#include "slabtide/core/file_error.h"

// What all that opens files shares: the descriptor, the words for what the system refuses, locks.

namespace slabtide {

/// What a new file is given, less the user's umask.
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
  /// 0, or the error number; a full network disk may only say so here.
  int close();

 private:
  int number_;
};

/// The path in quotation marks, as a message shows it.
std::string quoted(const std::filesystem::path& path);

/// The folder a path stands in.
std::filesystem::path folder_of(const std::filesystem::path& path);

/// "cannot write "day.json": the disk is full", and what to do.
FileError failure(std::string_view deed, const std::filesystem::path& path, std::string_view reason,
                  std::string next_step);
/// The same for an error number.
FileError system_failure(std::string_view deed, const std::filesystem::path& path, int code);
/// For what is no regular file.
FileError not_a_file(std::string_view deed, const std::filesystem::path& path, mode_t mode);

/// Where the symbolic links of `path` lead, whether or not there is something yet; empty where
/// they run in a circle.
std::optional<std::filesystem::path> link_target(std::filesystem::path path);

/// Writes it all; 0 or an error number.
int write_all(int descriptor, std::string_view text);

/// Waits for its turn. File systems without locks let everyone in. 0 or an error number.
int take_lock(int descriptor);

/// Whether the path still leads to the open file: another may have been put in its place.
bool is_still(int descriptor, const std::filesystem::path& path);

}  // namespace slabtide
