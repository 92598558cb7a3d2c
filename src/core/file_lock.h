#pragma once

#include <filesystem>
#include <optional>

#include "slabtide/core/file_error.h"

namespace slabtide {

/// A file held for reading, deciding and writing in one go: everyone else who asks for it waits.
/// The file may be replaced meanwhile (`replace_file`); those who waited then hold the new one.
/// Makes the file where there is none; one that is still empty at the end is taken away again.
/// Follows a symbolic link. File systems without locks let everyone in.
class FileLock {
 public:
  explicit FileLock(const std::filesystem::path& path);
  ~FileLock();
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;
  FileLock(FileLock&&) = delete;
  FileLock& operator=(FileLock&&) = delete;

  /// Why the file is not held; empty where it is.
  const std::optional<FileError>& error() const { return error_; }
  /// Its descriptor, for reading and for writing at its end.
  int descriptor() const { return descriptor_; }

 private:
  int try_open();
  int open_or_make();

  std::filesystem::path path_;
  int descriptor_ = -1;
  bool made_ = false;
  std::optional<FileError> error_;
};

}  // namespace slabtide
