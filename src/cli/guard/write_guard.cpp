#include "write_guard.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <ostream>
#include <set>

#include <fmt/format.h>

#include "core/leftovers.h"
#include "core/utf8.h"

namespace slabtide {

namespace {

namespace fs = std::filesystem;

/// The marks of the program's own files are at the beginning; forecasts are read whole.
constexpr std::size_t largest_own_bytes = 8 * largest_input_bytes;

std::string cannot(const std::string& path) {
  return fmt::format("cannot write \"{}\": ", printable(path));
}

/// A terminal, pipe or device contains nothing that could be lost.
bool holds_something(const std::string& path) {
  std::error_code problem;
  const fs::file_status status = fs::status(path, problem);
  return fs::is_regular_file(status) || status.type() == fs::file_type::not_found;
}

/// "it is the job", with the path it was read from if that differs.
std::string reads_it(const std::string& path, const ReadFile& read) {
  const std::string also = read.path == path ? "" : fmt::format(", \"{}\"", printable(read.path));
  return fmt::format("it is {}{}, which this run reads", read.role, also);
}

}  // namespace

WriteGuard::WriteGuard(const std::vector<ReadFile>& read, bool force) : force_(force) {
  for (const ReadFile& file : read) read_.emplace_back(identity_of(file.path), file);
  std::stable_sort(read_.begin(), read_.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
}

std::optional<FileError> WriteGuard::fault(std::span<const WrittenFile> files) const {
  std::map<FileIdentity, std::string> written;
  std::set<std::string> folders;
  for (const WrittenFile& file : files) {
    if (auto fault = fault_of(file)) return fault;
    if (!holds_something(file.path)) continue;
    const auto [first, is_new] = written.emplace(identity_of(file.path), file.path);
    if (!is_new) {
      return FileError{fmt::format("{}this run already writes it, as \"{}\"", cannot(file.path),
                                   printable(first->second)),
                       "Give each written file a name of its own"};
    }
    if (folders.insert(fs::path(file.path).parent_path().string()).second) {
      sweep_leftovers(file.path);
    }
  }
  return std::nullopt;
}

std::optional<FileError> WriteGuard::fault_of(const WrittenFile& file) const {
  if (!holds_something(file.path)) return std::nullopt;
  const FileIdentity wanted = identity_of(file.path);
  const auto found =
      std::lower_bound(read_.begin(), read_.end(), wanted,
                       [](const auto& read, const FileIdentity& id) { return read.first < id; });
  if (found != read_.end() && found->first == wanted) {
    return FileError{cannot(file.path) + reads_it(file.path, found->second),
                     "Give the written file another name"};
  }
  if (force_ || is_missing(file.path)) return std::nullopt;
  const FileText there = read_file(file.path, largest_own_bytes);
  if (!there.text) return there.error;
  return foreign(file, *there.text);
}

std::optional<FileError> WriteGuard::foreign(const WrittenFile& file, std::string_view text) const {
  if (force_ || may_make_way(file.kind, text)) return std::nullopt;
  return FileError{fmt::format("{}what is there is {}, expected {} that slabtide wrote",
                               cannot(file.path), what_it_is(text), words_of(file.kind)),
                   "Give another name; --force writes over it anyway"};
}

std::optional<FileError> WriteGuard::write(const WrittenFile& file, std::string_view text) const {
  const auto fault = fault_of(file);
  return fault ? fault : replace_file(file.path, text);
}

Option force_option() {
  return {"force", "", "write over even a file that slabtide did not write", false};
}

int refuse_to_write(std::string_view command, const FileError& fault, std::ostream& err) {
  err << fmt::format("slabtide {}: {}\n", command, fault.message);
  if (!fault.next_step.empty()) err << "  " << fault.next_step << "\n";
  return exit_input_wrong;
}

}  // namespace slabtide
