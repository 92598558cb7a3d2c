#include "slabtide/core/files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "file_lock.h"
#include "open_file.h"
#include "unfinished_file.h"

namespace slabtide {
namespace {

namespace fs = std::filesystem;

constexpr mode_t permission_bits = 07777;
constexpr std::size_t chunk_bytes = 65536;

FileError too_large(const fs::path& path, std::size_t limit_bytes) {
  return failure("read", path, fmt::format("it is over the limit of {} bytes", limit_bytes),
                 "Check that it is the file you meant");
}

/// Reads an open file, at most one byte over the limit. Returns 0 or an error number.
int read_all(int descriptor, std::size_t limit_bytes, std::string& text) {
  std::array<char, chunk_bytes> chunk{};
  while (text.size() <= limit_bytes) {
    const ssize_t got = ::read(descriptor, chunk.data(), chunk.size());
    if (got == 0) {
      return 0;
    }
    if (got < 0 && errno != EINTR) {
      return errno;
    }
    text.append(chunk.data(), got > 0 ? static_cast<std::size_t>(got) : 0);
  }
  return 0;
}

/// Makes a rename survive a power failure. Failing to sync the folder is not an error: the file is
/// complete either way.
void sync_folder(const fs::path& folder) {
  const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (descriptor.ok()) {
    ::fsync(descriptor.number());
  }
}

/// Who a file belongs to, and who may do what with it.
struct Ownership {
  uid_t user;
  gid_t group;
  mode_t mode;
};

/// Applies the ownership as far as the system allows. If the group cannot be kept, the permissions
/// are reduced so that nobody gains access.
int give(int descriptor, const Ownership& wanted) {
  struct stat status {};
  if (::fstat(descriptor, &status) != 0) return errno;
  mode_t mode = wanted.mode & permission_bits;
  if (status.st_uid != wanted.user || status.st_gid != wanted.group) {
    const bool both = ::fchown(descriptor, wanted.user, wanted.group) == 0;
    const bool group = both || status.st_gid == wanted.group ||
                       ::fchown(descriptor, static_cast<uid_t>(-1), wanted.group) == 0;
    if (!both) mode &= ~static_cast<mode_t>(S_ISUID | S_ISGID);
    if (!group) mode = (mode & ~static_cast<mode_t>(S_IRWXG)) | ((mode & S_IRWXO) << 3U);
  }
  return ::fchmod(descriptor, mode) == 0 ? 0 : errno;
}

std::optional<FileError> replace_regular(const fs::path& asked, const fs::path& target,
                                         const std::optional<Ownership>& owner,
                                         std::string_view text) {
  UnfinishedFile file(target);
  int code = file.code();
  if (code == 0) code = write_all(file.descriptor(), text);
  if (code == 0 && owner) code = give(file.descriptor(), *owner);
  if (code == 0) code = file.put_in_place();
  if (code != 0) return system_failure("write", asked, code);
  sync_folder(folder_of(target));
  return std::nullopt;
}

/// Writing blocks while a reader is slow, but opening never waits for a reader to appear.
int open_through(const fs::path& path) {
  const int number = ::open(path.c_str(), O_WRONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
  if (number < 0) return number;
  const int flags = ::fcntl(number, F_GETFL);
  static_cast<void>(::fcntl(number, F_SETFL, flags & ~O_NONBLOCK));
  return number;
}

/// For a terminal, pipe or device, which has no old content to protect.
std::optional<FileError> write_through(const fs::path& path, std::string_view text) {
  const Descriptor file(open_through(path));
  if (!file.ok() && errno == ENXIO) {
    return failure("write", path, "it is a pipe that nobody reads from, or a device that is away",
                   "Start the reader first, or name a file");
  }
  if (!file.ok()) {
    return system_failure("write", path, errno);
  }
  const int code = write_all(file.number(), text);
  return code == 0 ? std::nullopt : std::optional(system_failure("write", path, code));
}

std::optional<FileError> replace_existing(const fs::path& path, const struct stat& status,
                                          std::string_view text) {
  if (!S_ISREG(status.st_mode)) {
    return write_through(path, text);
  }
  // Renaming needs write permission on the folder only; honour a write-protected file too.
  if (::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) != 0) {
    return system_failure("write", path, errno);
  }
  std::error_code problem;
  const fs::path target = fs::canonical(path, problem);
  return problem ? system_failure("write", path, problem.value())
                 : replace_regular(path, target,
                                   Ownership{status.st_uid, status.st_gid, status.st_mode}, text);
}

/// What to append after `before`: the line, preceded by the heading or the mark if one is needed.
std::string addition(std::string_view before, const NewLine& added, bool& unfinished) {
  if (before.empty()) return fmt::format("{}{}", added.heading, added.line);
  unfinished = before.back() != '\n';
  return unfinished ? fmt::format("  {}\n{}", added.unfinished_mark, added.line)
                    : std::string(added.line);
}

/// Appends and syncs; on failure cuts the file back to its old size. Returns 0 or an error number.
int grow(int descriptor, off_t size, std::string_view text) {
  int code = write_all(descriptor, text);
  if (code == 0 && ::fsync(descriptor) != 0 && errno != EINVAL) code = errno;
  if (code != 0) static_cast<void>(::ftruncate(descriptor, size) == 0);
  return code;
}

}  // namespace

FileText read_file(const fs::path& path, std::size_t limit_bytes) {
  // Opened non-blocking, since opening a pipe that nobody writes to would hang.
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  struct stat status {};
  if (!file.ok() || ::fstat(file.number(), &status) != 0) {
    return {std::nullopt, system_failure("read", path, errno)};
  }
  if (!S_ISREG(status.st_mode)) {
    return {std::nullopt, not_a_file("read", path, status.st_mode)};
  }
  if (static_cast<std::uintmax_t>(status.st_size) > limit_bytes) {
    return {std::nullopt, too_large(path, limit_bytes)};
  }
  std::string text;
  const int code = read_all(file.number(), limit_bytes, text);
  if (code != 0) {
    return {std::nullopt, system_failure("read", path, code)};
  }
  if (text.size() > limit_bytes) {  // it grew since, or its size was not known
    return {std::nullopt, too_large(path, limit_bytes)};
  }
  return {std::move(text), {}};
}

bool is_missing(const fs::path& path) {
  struct stat status {};
  return ::stat(path.c_str(), &status) != 0 &&
         (errno == ENOENT || errno == ENOTDIR || errno == ENAMETOOLONG);
}

std::optional<FileError> replace_file(const fs::path& path, std::string_view text) {
  struct stat status {};
  if (::stat(path.c_str(), &status) == 0) {
    return replace_existing(path, status, text);
  }
  if (errno != ENOENT) {
    return system_failure("write", path, errno);
  }
  const std::optional<fs::path> target = link_target(path);
  if (!target) {
    return system_failure("write", path, ELOOP);
  }
  std::error_code problem;
  if (!fs::is_directory(folder_of(*target), problem)) {
    return failure("write", path, fmt::format("there is no folder {}", quoted(folder_of(*target))),
                   "Create the folder first, or choose another place");
  }
  return replace_regular(path, *target, std::nullopt, text);
}

FileIdentity identity_of(const fs::path& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) == 0) return {status.st_dev, status.st_ino, {}};
  const fs::path target = link_target(path).value_or(path);
  if (::stat(folder_of(target).c_str(), &status) == 0) {
    return {status.st_dev, status.st_ino, target.filename().string()};
  }
  return {0, 0, fs::absolute(target).lexically_normal().string()};
}

Appended append_line(const fs::path& path, const LineChoice& choose) {
  const FileLock lock(path);
  if (lock.error()) return {lock.error(), false};
  const FileText before = read_file(path);
  if (!before.text) return {before.error, false};
  const std::optional<NewLine> added = choose(*before.text);
  if (!added) return {};
  Appended result;
  const auto size = static_cast<off_t>(before.text->size());
  const std::string text = addition(*before.text, *added, result.ended_unfinished);
  if (const int code = grow(lock.descriptor(), size, text); code != 0) {
    result.error = system_failure("write", path, code);
  } else if (size == 0) {
    sync_folder(folder_of(path));
  }
  return result;
}

Appended append_line(const fs::path& path, const NewLine& added) {
  return append_line(path, [&added](std::string_view /*before*/) { return std::optional(added); });
}

}  // namespace slabtide
