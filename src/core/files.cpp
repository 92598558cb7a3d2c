#include "slabtide/core/files.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <random>
#include <system_error>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "slabtide/core/text.h"
#include "slabtide/core/utf8.h"

namespace slabtide {
namespace {

namespace fs = std::filesystem;

constexpr mode_t permission_bits = 07777;
/// What a new file is given, less the user's umask.
constexpr mode_t new_file_mode = 0666;
constexpr int most_links_followed = 40;
constexpr int most_temporary_names = 100;
constexpr std::size_t chunk_bytes = 65536;

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
  /// 0, or the error number; a full network disk may only say so here.
  int close() {
    const int open_number = std::exchange(number_, -1);
    return open_number >= 0 && ::close(open_number) != 0 ? errno : 0;
  }

 private:
  int number_;
};

/// Removes the file it names unless told that it has found its place.
class TemporaryFile {
 public:
  explicit TemporaryFile(fs::path path) : path_(std::move(path)) {}
  ~TemporaryFile() {
    if (!path_.empty()) {
      ::unlink(path_.c_str());
    }
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  TemporaryFile(TemporaryFile&&) = delete;
  TemporaryFile& operator=(TemporaryFile&&) = delete;

  void keep() { path_.clear(); }

 private:
  fs::path path_;
};

std::string quoted(const fs::path& path) { return '"' + printable(path.string()) + '"'; }

fs::path folder_of(const fs::path& path) {
  return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

FileError failure(std::string_view deed, const fs::path& path, std::string_view reason,
                  std::string next_step) {
  return {fmt::format("cannot {} {}: {}", deed, quoted(path), reason), std::move(next_step)};
}

/// The file of the same folder that may have been meant.
std::string next_step_for_missing(const fs::path& path) {
  std::vector<std::string> names;
  std::error_code problem;
  for (fs::directory_iterator entry(folder_of(path), problem), end; entry != end;
       entry.increment(problem)) {
    names.push_back(entry->path().filename().string());
  }
  std::sort(names.begin(), names.end());
  const std::string wanted = path.filename().string();
  const std::vector<std::string_view> candidates(names.begin(), names.end());
  const std::optional<std::string_view> meant = nearest(wanted, candidates);
  return meant ? fmt::format("Did you mean {}?", quoted(fs::path(path).replace_filename(*meant)))
               : "Check the path";
}

FileError system_failure(std::string_view deed, const fs::path& path, int code) {
  switch (code) {
    case ENOENT:
      return failure(deed, path, "there is no such file", next_step_for_missing(path));
    case ENOTDIR:
      return failure(deed, path, "a part of the path is a file, not a folder", "Check the path");
    case EISDIR:
      return failure(deed, path, "it is a folder", "Name a file in it");
    case EACCES:
    case EPERM:
      return failure(deed, path, "permission refused",
                     "Check who owns the file and its folder, or choose another place");
    case ENOSPC:
    case EDQUOT:
      return failure(deed, path, "the disk is full", "Make room, or choose another place");
    case EROFS:
      return failure(deed, path, "the disk is read-only", "Choose another place");
    case ENAMETOOLONG:
      return failure(deed, path, "the name is too long", "Choose a shorter name");
    case ELOOP:
      return failure(deed, path, "its symbolic links run in a circle", "Check the links");
    default:
      return failure(deed, path, std::generic_category().message(code), "");
  }
}

FileError not_a_file(std::string_view deed, const fs::path& path, mode_t mode) {
  if (S_ISDIR(mode)) {
    return system_failure(deed, path, EISDIR);
  }
  return failure(deed, path, "it is a pipe, socket or device, not a file",
                 "Save its contents to a file and name that");
}

FileError too_large(const fs::path& path, std::size_t limit_bytes) {
  return failure("read", path, fmt::format("it is over the limit of {} bytes", limit_bytes),
                 "Check that it is the file you meant");
}

/// All of an open file, no more than one byte over the limit; or an error number.
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

int write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t put = ::write(descriptor, text.data(), text.size());
    if (put < 0 && errno != EINTR) {
      return errno;
    }
    text.remove_prefix(put > 0 ? static_cast<std::size_t>(put) : 0);
  }
  return 0;
}

/// Where the symbolic links of `path` lead, whether or not there is something yet.
std::optional<fs::path> link_target(fs::path path) {
  for (int links = 0; links < most_links_followed; ++links) {
    std::error_code problem;
    const fs::path next = fs::read_symlink(path, problem);
    if (problem) {
      return path;
    }
    path = folder_of(path) / next;  // an absolute `next` takes the place of all
  }
  return std::nullopt;
}

/// A new file beside `path` that nobody else has, with its name.
std::pair<Descriptor, fs::path> create_beside(const fs::path& path) {
  std::random_device random;
  for (int i = 0; i < most_temporary_names; ++i) {
    fs::path name = folder_of(path) / fmt::format(".{:08x}{:08x}.part", random(), random());
    const int number = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, new_file_mode);
    if (number >= 0 || errno != EEXIST) {
      return {Descriptor(number), std::move(name)};
    }
  }
  return {Descriptor(-1), fs::path{}};
}

/// Makes a rename last through a power cut. A folder that cannot be synced is no failure:
/// the file is whole either way.
void sync_folder(const fs::path& folder) {
  const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (descriptor.ok()) {
    ::fsync(descriptor.number());
  }
}

/// Writes, syncs and closes; 0 or an error number. File systems that cannot sync say EINVAL.
int fill(Descriptor& file, std::string_view text, std::optional<mode_t> mode) {
  int code = write_all(file.number(), text);
  if (code == 0 && mode && ::fchmod(file.number(), *mode & permission_bits) != 0) {
    code = errno;
  }
  if (code == 0 && ::fsync(file.number()) != 0 && errno != EINVAL) {
    code = errno;
  }
  const int close_code = file.close();
  return code != 0 ? code : close_code;
}

std::optional<FileError> replace_regular(const fs::path& asked, const fs::path& target,
                                         std::optional<mode_t> mode, std::string_view text) {
  auto [file, name] = create_beside(target);
  if (!file.ok()) {
    return system_failure("write", asked, errno);
  }
  TemporaryFile temporary(name);
  int code = fill(file, text, mode);
  if (code == 0 && ::rename(name.c_str(), target.c_str()) != 0) {
    code = errno;
  }
  if (code != 0) {
    return system_failure("write", asked, code);
  }
  temporary.keep();
  sync_folder(folder_of(target));
  return std::nullopt;
}

/// A terminal, pipe or device: there is nothing to keep whole.
std::optional<FileError> write_through(const fs::path& path, std::string_view text) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
  if (!file.ok()) {
    return system_failure("write", path, errno);
  }
  const int code = write_all(file.number(), text);
  return code == 0 ? std::nullopt : std::optional(system_failure("write", path, code));
}

std::optional<FileError> replace_existing(const fs::path& path, mode_t mode,
                                          std::string_view text) {
  if (!S_ISREG(mode)) {
    return write_through(path, text);
  }
  // A rename asks leave of the folder only; the user's own write protection counts too.
  if (::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) != 0) {
    return system_failure("write", path, errno);
  }
  std::error_code problem;
  const fs::path target = fs::canonical(path, problem);
  return problem ? system_failure("write", path, problem.value())
                 : replace_regular(path, target, mode, text);
}

/// Waits for its turn. File systems without locks let everyone in; a line is one write anyway.
int lock(int descriptor) {
  while (::flock(descriptor, LOCK_EX) != 0) {
    if (errno == EINTR) continue;
    return errno == ENOLCK || errno == EOPNOTSUPP || errno == EINVAL ? 0 : errno;
  }
  return 0;
}

/// Whether the path still leads to the open file: an editor may have put another in its place.
bool is_still(int descriptor, const fs::path& path) {
  struct stat open_file {};
  struct stat named {};
  return ::fstat(descriptor, &open_file) == 0 && ::stat(path.c_str(), &named) == 0 &&
         open_file.st_dev == named.st_dev && open_file.st_ino == named.st_ino;
}

/// The file open at its end and locked, or an error number.
std::pair<Descriptor, int> open_to_append(const fs::path& path) {
  constexpr int most_tries = 100;
  for (int i = 0; i < most_tries; ++i) {
    Descriptor file(
        ::open(path.c_str(), O_RDWR | O_APPEND | O_CREAT | O_CLOEXEC | O_NONBLOCK, new_file_mode));
    if (!file.ok()) return {Descriptor(-1), errno};
    if (const int code = lock(file.number()); code != 0) return {Descriptor(-1), code};
    if (is_still(file.number(), path)) return {std::move(file), 0};
  }
  return {Descriptor(-1), EBUSY};
}

/// What goes behind `size` bytes: the line, and what must stand between.
std::string addition(int descriptor, off_t size, const NewLine& added, bool& unfinished) {
  if (size == 0) return fmt::format("{}{}", added.heading, added.line);
  char last = '\0';
  const bool known = ::pread(descriptor, &last, 1, size - 1) == 1;
  unfinished = known && last != '\n';
  return unfinished ? fmt::format("  {}\n{}", added.unfinished_mark, added.line)
                    : std::string(added.line);
}

/// Writes and syncs; where that fails the file is cut back to what it was. 0 or an error number.
int grow(int descriptor, off_t size, std::string_view text) {
  int code = write_all(descriptor, text);
  if (code == 0 && ::fsync(descriptor) != 0 && errno != EINVAL) code = errno;
  if (code != 0) static_cast<void>(::ftruncate(descriptor, size) == 0);
  return code;
}

}  // namespace

FileText read_file(const fs::path& path, std::size_t limit_bytes) {
  // Non-blocking, or a pipe that nobody writes to would hold the program.
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
  if (text.size() > limit_bytes) {  // it grew, or its size was not known
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
    return replace_existing(path, status.st_mode, text);
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

Appended append_line(const fs::path& path, const NewLine& added) {
  Appended result;
  auto [file, code] = open_to_append(path);
  struct stat status {};
  if (code == 0 && ::fstat(file.number(), &status) != 0) code = errno;
  if (code == 0 && !S_ISREG(status.st_mode)) {
    result.error = not_a_file("write", path, status.st_mode);
    return result;
  }
  if (code == 0) {
    code = grow(file.number(), status.st_size,
                addition(file.number(), status.st_size, added, result.ended_unfinished));
  }
  if (code != 0) {
    result.error = system_failure("write", path, code);
  } else if (status.st_size == 0) {
    sync_folder(folder_of(path));
  }
  return result;
}

}  // namespace slabtide
