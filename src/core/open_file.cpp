#include "open_file.h"

#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>
#include <vector>

#include <fmt/format.h>

#include "text.h"
#include "utf8.h"

namespace slabtide {

namespace fs = std::filesystem;

namespace {

constexpr int max_links_followed = 40;

/// Suggests a file in the same folder with a similar name.
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

}  // namespace

int Descriptor::close() {
  const int open_number = std::exchange(number_, -1);
  return open_number >= 0 && ::close(open_number) != 0 ? errno : 0;
}

std::string quoted(const fs::path& path) { return '"' + printable(path.string()) + '"'; }

fs::path folder_of(const fs::path& path) {
  return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

FileError failure(std::string_view deed, const fs::path& path, std::string_view reason,
                  std::string next_step) {
  return {fmt::format("cannot {} {}: {}", deed, quoted(path), reason), std::move(next_step)};
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
      return failure(deed, path, "permission denied",
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

std::optional<fs::path> link_target(fs::path path) {
  for (int links = 0; links < max_links_followed; ++links) {
    std::error_code problem;
    const fs::path next = fs::read_symlink(path, problem);
    if (problem) {
      return path;
    }
    path = folder_of(path) / next;  // an absolute `next` replaces the whole path
  }
  return std::nullopt;
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

int take_lock(int descriptor) {
  while (::flock(descriptor, LOCK_EX) != 0) {
    if (errno == EINTR) continue;
    return errno == ENOLCK || errno == EOPNOTSUPP || errno == EINVAL ? 0 : errno;
  }
  return 0;
}

bool is_still(int descriptor, const fs::path& path) {
  struct stat open_file {};
  struct stat named {};
  return ::fstat(descriptor, &open_file) == 0 && ::stat(path.c_str(), &named) == 0 &&
         open_file.st_dev == named.st_dev && open_file.st_ino == named.st_ino;
}

}  // namespace slabtide
