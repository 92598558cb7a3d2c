#pragma once

#include <filesystem>
#include <string>

namespace slabtide {

/// A file written under its own name beside the file it will replace. It is locked while being
/// written, so that others can tell it from a leftover, and it is removed if it never takes that
/// file's place.
class UnfinishedFile {
 public:
  explicit UnfinishedFile(std::filesystem::path target);
  ~UnfinishedFile();
  UnfinishedFile(const UnfinishedFile&) = delete;
  UnfinishedFile& operator=(const UnfinishedFile&) = delete;
  UnfinishedFile(UnfinishedFile&&) = delete;
  UnfinishedFile& operator=(UnfinishedFile&&) = delete;

  /// Error number if the file could not be created; 0 if it was.
  int code() const { return code_; }
  int descriptor() const { return descriptor_; }
  /// Syncs the file and renames it over the target. Returns 0 or an error number.
  int put_in_place();

 private:
  void create();
  void remove();

  std::filesystem::path target_;
  std::string name_;
  int descriptor_ = -1;
  int code_ = 0;
  std::size_t slot_ = 0;
};

/// How the names of files written by this machine begin.
std::string unfinished_prefix();

/// How they end.
inline constexpr const char* unfinished_ending = ".part";

/// Removes every file being written and lets no more be created, because the process is ending. May
/// be called from a signal handler.
void remove_all_unfinished();

}  // namespace slabtide
