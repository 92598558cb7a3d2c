#pragma once

#include <filesystem>
#include <optional>

#include "slabtide/core/file_error.h"

namespace slabtide {

/// A file locked so that it can be read, decided on and written without interference; everyone else
/// who asks for it waits. If the file is replaced meanwhile (`replace_file`), those who waited get
/// the new one. The file is created if missing, and removed again if it is still empty at the end.
/// Follows a symbolic link. On file systems without locks nobody waits.
class FileLock {
 public:
  explicit FileLock(const std::filesystem::path& path);
  ~FileLock();
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;
  FileLock(FileLock&&) = delete;
  FileLock& operator=(FileLock&&) = delete;

  /// Why the lock was not obtained; empty if it was.
  const std::optional<FileError>& error() const { return error_; }
  /// The open file, for reading and for appending.
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
