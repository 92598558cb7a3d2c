#include "file_lock.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>

#include "open_file.h"

namespace slabtide {

namespace {

/// Gives up if the file is replaced again and again while this process waits.
constexpr int max_tries = 1000;
constexpr int open_flags = O_RDWR | O_APPEND | O_CLOEXEC | O_NONBLOCK;

std::optional<FileError> fault_of(int descriptor, const std::filesystem::path& path) {
  struct stat status {};
  if (::fstat(descriptor, &status) != 0) return system_failure("write", path, errno);
  if (!S_ISREG(status.st_mode)) return not_a_file("write", path, status.st_mode);
  return std::nullopt;
}

}  // namespace

FileLock::FileLock(const std::filesystem::path& path) : path_(path) {
  for (int i = 0; i < max_tries; ++i) {
    const int code = try_open();
    if (code == EAGAIN) continue;
    if (code != 0) error_ = system_failure("write", path, code);
    return;
  }
  error_ = system_failure("write", path, EBUSY);
}

FileLock::~FileLock() {
  if (descriptor_ < 0) return;
  struct stat status {};
  const bool empty = ::fstat(descriptor_, &status) == 0 && status.st_size == 0;
  if (made_ && empty && is_still(descriptor_, path_)) ::unlink(path_.c_str());
  ::close(descriptor_);
}

/// One attempt; EAGAIN if the file was replaced while this process waited.
int FileLock::try_open() {
  Descriptor file(open_or_make());
  if (!file.ok()) return errno == EEXIST ? EAGAIN : errno;
  error_ = fault_of(file.number(), path_);
  if (error_) return 0;
  if (const int code = take_lock(file.number()); code != 0) return code;
  if (!is_still(file.number(), path_)) return EAGAIN;
  descriptor_ = file.release();
  return 0;
}

/// Distinguishes a file created here from one that was there: only the former may be removed again.
int FileLock::open_or_make() {
  made_ = false;
  const int there = ::open(path_.c_str(), open_flags);
  if (there >= 0 || errno != ENOENT) return there;
  const auto target = link_target(path_);
  if (!target) {
    errno = ELOOP;
    return -1;
  }
  const int fresh = ::open(target->c_str(), open_flags | O_CREAT | O_EXCL, new_file_mode);
  made_ = fresh >= 0;
  if (made_) path_ = *target;
  return fresh;
}

}  // namespace slabtide
