#pragma once

#include <filesystem>
#include <string>

namespace slabtide {

/// A file that is written under a name of its own beside the one whose place it will take. It is
/// held by a lock as long as it is written, so that others can tell it from one that was left
/// behind, and taken away where it does not come to its place.
class UnfinishedFile {
 public:
  explicit UnfinishedFile(std::filesystem::path target);
  ~UnfinishedFile();
  UnfinishedFile(const UnfinishedFile&) = delete;
  UnfinishedFile& operator=(const UnfinishedFile&) = delete;
  UnfinishedFile(UnfinishedFile&&) = delete;
  UnfinishedFile& operator=(UnfinishedFile&&) = delete;

  /// Why there is none, an error number; 0 where there is.
  int code() const { return code_; }
  int descriptor() const { return descriptor_; }
  /// Syncs it to the disk and renames it over the target. 0 or an error number.
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

/// What the names begin with of those that this machine writes.
std::string unfinished_prefix();

/// What they end with.
inline constexpr const char* unfinished_ending = ".part";

/// Takes away every file that is being written, and lets no more be begun: the process ends.
/// May be called from a signal handler.
void remove_all_unfinished();

}  // namespace slabtide
