#include "slabtide/core/files.h"

#include <array>
#include <csignal>
#include <fstream>
#include <iterator>
#include <string>

#include <doctest/doctest.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/sysmacros.h>
#include <unistd.h>

#include "unit/core/temporary_folder.h"

namespace {

using namespace slabtide;
namespace fs = std::filesystem;

std::string message(const std::optional<FileError>& error) {
  return error ? error->message : "done";
}

mode_t mode_of(const fs::path& path) {
  struct stat status {};
  REQUIRE(::stat(path.c_str(), &status) == 0);
  return status.st_mode & 07777U;
}

/// While it exists this process cannot write any file beyond `bytes`, so that a write fails after
/// it has begun (EFBIG).
class FileSizeLimit {
 public:
  explicit FileSizeLimit(rlim_t bytes) : signal_(std::signal(SIGXFSZ, SIG_IGN)) {
    REQUIRE(::getrlimit(RLIMIT_FSIZE, &before_) == 0);
    const rlimit now{bytes, before_.rlim_max};
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &now) == 0);
  }
  ~FileSizeLimit() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, signal_);
  }
  FileSizeLimit(const FileSizeLimit&) = delete;
  FileSizeLimit& operator=(const FileSizeLimit&) = delete;
  FileSizeLimit(FileSizeLimit&&) = delete;
  FileSizeLimit& operator=(FileSizeLimit&&) = delete;

 private:
  rlimit before_{};
  void (*signal_)(int);
};

}  // namespace

TEST_CASE("a file is read whole, byte by byte as it is") {
  const TemporaryFolder folder;
  const std::string text("a\r\nb\0\xff", 6);
  CHECK(read_file(folder.write("f", text)).text == text);
  CHECK(read_file(folder.write("empty", "")).text == "");
  const std::string large(200000, 'x');
  CHECK(read_file(folder.write("large", large)).text == large);
}

TEST_CASE("a file over the limit is refused, one at the limit is not") {
  const TemporaryFolder folder;
  const std::string path = folder.write("f", "12345678");
  CHECK(read_file(path, 8).text == "12345678");
  const FileText refused = read_file(path, 7);
  CHECK_FALSE(refused.text);
  CHECK(refused.error.message ==
        fmt::format("cannot read \"{}\": it is over the limit of 7 bytes", path));
  CHECK(refused.error.next_step == "Check that it is the file you meant");
}

TEST_CASE("a file of a terabyte is refused") {
  const TemporaryFolder folder;
  const std::string path = folder.write("sparse", "");
  fs::resize_file(path, std::uintmax_t{1} << 40U);  // a sparse terabyte
  CHECK_FALSE(read_file(path).text);
}

TEST_CASE("a file whose size is not known beforehand is held to the limit as well") {
  // Files in /proc report a size of 0 bytes.
  CHECK(read_file("/proc/self/maps").text->size() > 100);
  CHECK_FALSE(read_file("/proc/self/maps", 100).text);
}

TEST_CASE("what is not a regular file is refused without waiting for it") {
  const TemporaryFolder folder;
  const std::string pipe = (folder.path() / "pipe").string();
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  for (const std::string& path : {pipe, std::string("/dev/zero")}) {
    const FileText refused = read_file(path);
    CHECK(refused.error.message ==
          fmt::format("cannot read \"{}\": it is a pipe, socket or device, not a file", path));
    CHECK(refused.error.next_step == "Save its contents to a file and name that");
  }
  const FileText a_folder = read_file(folder.path());
  CHECK(a_folder.error.message ==
        fmt::format("cannot read \"{}\": it is a folder", folder.path().string()));
  CHECK(a_folder.error.next_step == "Name a file in it");
}

TEST_CASE("a file that is not there") {
  const TemporaryFolder folder;
  const std::string file = folder.write("landing.toml", "");
  const std::string wrong = (folder.path() / "lading.toml").string();
  CHECK(read_file(wrong).error.message ==
        fmt::format("cannot read \"{}\": there is no such file", wrong));
  CHECK(read_file(wrong).error.next_step == fmt::format("Did you mean \"{}\"?", file));
  CHECK(read_file(folder.path() / "walk.toml").error.next_step == "Check the path");
  CHECK(read_file(folder.path() / "none/walk.toml").error.next_step == "Check the path");
  CHECK(read_file("").error.message == "cannot read \"\": there is no such file");
  CHECK(read_file(file + "/x").error.message ==
        fmt::format("cannot read \"{}/x\": a part of the path is a file, not a folder", file));
}

TEST_CASE("a new file is written, an old one replaced") {
  const TemporaryFolder folder;
  const fs::path path = folder.path() / "plan.txt";
  const std::string text("one\0two\n", 8);
  CHECK(message(replace_file(path, text)) == "done");
  CHECK(folder.read("plan.txt") == text);
  CHECK(message(replace_file(path, "")) == "done");
  CHECK(folder.read("plan.txt").empty());
  const std::string large(3000000, 'x');
  CHECK(message(replace_file(path, large)) == "done");
  CHECK(folder.read("plan.txt") == large);
  CHECK(folder.count() == 1);  // nothing left beside it
}

TEST_CASE("a reader of the old file keeps the old text") {
  const TemporaryFolder folder;
  const std::string path = folder.write("plan.txt", "old");
  std::ifstream reader(path);
  CHECK(message(replace_file(path, "new")) == "done");
  CHECK(std::string(std::istreambuf_iterator<char>(reader), {}) == "old");
  CHECK(folder.read("plan.txt") == "new");
}

TEST_CASE("an existing file keeps its permissions, a new one has those of the umask") {
  const TemporaryFolder folder;
  const std::string path = folder.write("plan.txt", "old");
  for (const mode_t mode : {0600U, 0640U, 0666U, 0755U}) {
    REQUIRE(::chmod(path.c_str(), mode) == 0);
    CHECK(message(replace_file(path, "new")) == "done");
    CHECK(mode_of(path) == mode);
  }
  const mode_t before = ::umask(027);
  CHECK(message(replace_file(folder.path() / "fresh", "new")) == "done");
  ::umask(before);
  CHECK(mode_of(folder.path() / "fresh") == 0640);
}

TEST_CASE("a symbolic link stays and its target is replaced") {
  const TemporaryFolder folder;
  folder.make_folder("real");
  folder.write("real/plan.txt", "old");
  fs::create_symlink("real/plan.txt", folder.path() / "link");
  fs::create_symlink("link", folder.path() / "link_to_link");
  CHECK(message(replace_file(folder.path() / "link_to_link", "new")) == "done");
  CHECK(folder.read("real/plan.txt") == "new");
  CHECK(fs::is_symlink(folder.path() / "link"));
  CHECK(fs::is_symlink(folder.path() / "link_to_link"));
}

TEST_CASE("a symbolic link to what is not there yet makes the target") {
  const TemporaryFolder folder;
  folder.make_folder("real");
  fs::create_symlink("real/plan.txt", folder.path() / "link");
  CHECK(message(replace_file(folder.path() / "link", "new")) == "done");
  CHECK(folder.read("real/plan.txt") == "new");
  CHECK(fs::is_symlink(folder.path() / "link"));
}

TEST_CASE("links in a circle are refused") {
  const TemporaryFolder folder;
  fs::create_symlink("b", folder.path() / "a");
  fs::create_symlink("a", folder.path() / "b");
  const std::string path = (folder.path() / "a").string();
  CHECK(message(replace_file(path, "x")) ==
        fmt::format("cannot write \"{}\": its symbolic links run in a circle", path));
}

TEST_CASE("a folder that is not there, or is a file, or takes the file's place") {
  const TemporaryFolder folder;
  const std::string missing = (folder.path() / "none/plan.txt").string();
  const auto no_folder = replace_file(missing, "x");
  CHECK(message(no_folder) == fmt::format("cannot write \"{}\": there is no folder \"{}\"", missing,
                                          (folder.path() / "none").string()));
  CHECK(no_folder->next_step == "Create the folder first, or choose another place");
  const std::string file = folder.write("file", "kept");
  CHECK(message(replace_file(file + "/plan.txt", "x")) ==
        fmt::format("cannot write \"{}/plan.txt\": a part of the path is a file, not a folder",
                    file));
  folder.make_folder("sub");
  CHECK(message(replace_file(folder.path() / "sub", "x")) ==
        fmt::format("cannot write \"{}/sub\": it is a folder", folder.path().string()));
  CHECK(folder.read("file") == "kept");
  CHECK(folder.count() == 2);
}

TEST_CASE("a name too long is refused in words") {
  const TemporaryFolder folder;
  const std::string path = (folder.path() / std::string(300, 'n')).string();
  CHECK(message(replace_file(path, "x")) ==
        fmt::format("cannot write \"{}\": the name is too long", path));
  CHECK(folder.count() == 0);
}

TEST_CASE("a name of the longest length still has room for the file beside it") {
  const TemporaryFolder folder;
  const fs::path path = folder.path() / std::string(255, 'n');
  CHECK(message(replace_file(path, "x")) == "done");
  CHECK(read_file(path).text == "x");
}

TEST_CASE("a name without a folder is in the present one") {
  const TemporaryFolder folder;
  const fs::path before = fs::current_path();
  fs::current_path(folder.path());
  CHECK(message(replace_file("plan.txt", "x")) == "done");
  CHECK(read_file("plan.txt").text == "x");
  CHECK(read_file("plam.txt").error.next_step == "Did you mean \"plan.txt\"?");
  fs::current_path(before);
}

TEST_CASE("a pipe is written to, not replaced") {
  const TemporaryFolder folder;
  const fs::path pipe = folder.path() / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  const int reader = ::open(pipe.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC);
  CHECK(message(replace_file(pipe, "through")) == "done");
  CHECK(fs::is_fifo(pipe));
  std::array<char, 16> got{};
  CHECK(::read(reader, got.data(), got.size()) == 7);
  CHECK(std::string_view(got.data()) == "through");
  ::close(reader);
}

TEST_CASE("a full disk is told in words") {
  // If the program were wrong, root could damage /dev/full itself; other users could not.
  const TemporaryFolder folder;
  fs::path full = "/dev/full";
  if (::geteuid() == 0) {
    full = folder.path() / "full";
    if (::mknod(full.c_str(), S_IFCHR | 0600, makedev(1, 7)) != 0 ||
        ::access(full.c_str(), W_OK) != 0) {
      MESSAGE("no device can be made here");
      return;
    }
  }
  const auto error = replace_file(full, "x");
  CHECK(message(error) == fmt::format("cannot write \"{}\": the disk is full", full.string()));
  CHECK(error->next_step == "Make room, or choose another place");
}

TEST_CASE("a file or folder the user may not write to is left as it is") {
  if (::geteuid() != 0) {
    MESSAGE("needs root, to act as a user without rights");
    return;
  }
  const TemporaryFolder folder;
  fs::permissions(folder.path(), fs::perms(0777));
  const std::string path = folder.write("plan.txt", "kept");
  REQUIRE(::chmod(path.c_str(), 0444) == 0);
  folder.make_folder("closed");
  REQUIRE(::seteuid(65534) == 0);
  const auto file = replace_file(path, "new");
  const auto in_closed = replace_file(folder.path() / "closed/plan.txt", "new");
  REQUIRE(::seteuid(0) == 0);
  CHECK(message(file) == fmt::format("cannot write \"{}\": permission denied", path));
  CHECK(file->next_step == "Check who owns the file and its folder, or choose another place");
  CHECK(message(in_closed) == fmt::format("cannot write \"{}/closed/plan.txt\": permission denied",
                                          folder.path().string()));
  CHECK(folder.read("plan.txt") == "kept");
  CHECK(folder.count() == 2);
}

TEST_CASE("a write that fails half way leaves the old file and nothing beside it") {
  const TemporaryFolder folder;
  const std::string path = folder.write("plan.txt", "kept");
  std::optional<FileError> error;
  {
    const FileSizeLimit limit(1000);
    error = replace_file(path, std::string(5000, 'x'));
  }
  CHECK(message(error) == fmt::format("cannot write \"{}\": File too large", path));
  CHECK(folder.read("plan.txt") == "kept");
  CHECK(folder.count() == 1);
}
