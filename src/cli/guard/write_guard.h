#pragma once

#include <iosfwd>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cli/line/command_line.h"
#include "own_file.h"
#include "slabtide/core/files.h"

namespace slabtide {

/// A file that a run reads, with its role: "the forecast of pad.toml".
struct ReadFile {
  std::string path;
  std::string role;
};

/// A file that a run writes.
struct WrittenFile {
  std::string path;
  FileKind kind = FileKind::page;
};

/// Protects files from being overwritten. Refuses a file that the run reads (by whatever path), one
/// that it already writes, and an existing one that is not recognisably the program's own
/// (`may_make_way`); --force overrides only the last.
class WriteGuard {
 public:
  WriteGuard(const std::vector<ReadFile>& read, bool force);

  /// Why these files must not be written, in words; empty if they may be. Also removes what killed
  /// runs left in their folders.
  std::optional<FileError> fault(std::span<const WrittenFile> files) const;
  /// Checks once more, then replaces the file.
  std::optional<FileError> write(const WrittenFile& file, std::string_view text) const;
  /// Why a file with this text must not be replaced by one of that kind; for files that grow under
  /// a lock.
  std::optional<FileError> foreign(const WrittenFile& file, std::string_view text) const;

 private:
  std::optional<FileError> fault_of(const WrittenFile& file) const;

  std::vector<std::pair<FileIdentity, ReadFile>> read_;
  bool force_ = false;
};

/// The switch --force, for every command that writes files.
Option force_option();

/// Reports why nothing is written, and returns the exit code.
int refuse_to_write(std::string_view command, const FileError& fault, std::ostream& err);

}  // namespace slabtide
