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

/// A file that a run reads, and what it is to it: "the forecast of pad.toml".
struct ReadFile {
  std::string path;
  std::string role;
};

/// A file that a run writes.
struct WrittenFile {
  std::string path;
  FileKind kind = FileKind::page;
};

/// Stands before every file that the program writes. Refused are a file that the run reads, by
/// whatever path, one that it writes already, and an existing one that is not recognisably of the
/// program's own (`may_make_way`); the last gives way to --force.
class WriteGuard {
 public:
  WriteGuard(const std::vector<ReadFile>& read, bool force);

  /// Why these must not be written, in words; empty where they may. Sweeps their folders of what
  /// killed runs have left.
  std::optional<FileError> fault(std::span<const WrittenFile> files) const;
  /// Asks once more, then replaces the file.
  std::optional<FileError> write(const WrittenFile& file, std::string_view text) const;
  /// Why this text must not make way for a file of that kind; for what grows under a lock.
  std::optional<FileError> foreign(const WrittenFile& file, std::string_view text) const;

 private:
  std::optional<FileError> fault_of(const WrittenFile& file) const;

  std::vector<std::pair<FileIdentity, ReadFile>> read_;
  bool force_ = false;
};

/// The switch --force, for every command that writes.
Option force_option();

/// Tells why nothing is written, and gives the exit code.
int refuse_to_write(std::string_view command, const FileError& fault, std::ostream& err);

}  // namespace slabtide
