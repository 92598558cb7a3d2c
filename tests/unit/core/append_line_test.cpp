#include <csignal>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "slabtide/core/files.h"
#include "support/run_program.h"

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const std::string heading = "# a heading\n";
const std::string mark = "# cut short";

Appended append(const fs::path& path, const std::string& line) {
  return append_line(path, {line, heading, mark});
}

void must_append(const fs::path& path, const std::string& line) {
  const Appended done = append(path, line);
  REQUIRE_MESSAGE(!done.error, (done.error ? done.error->message : std::string()));
}

/// Runs `work` in a separate process that cannot write any file beyond `bytes`. The kernel writes
/// up to there and ends the process with SIGXFSZ or, if that is ignored, fails its next write.
template <class Work>
int in_limited_process(rlim_t bytes, void (*on_limit)(int), Work work) {
  const pid_t child = ::fork();
  if (child == 0) {
    const rlimit limit{bytes, bytes};
    std::signal(SIGXFSZ, on_limit);
    if (::setrlimit(RLIMIT_FSIZE, &limit) != 0) ::_exit(99);
    ::_exit(work() ? 0 : 1);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return WIFSIGNALED(status) ? 128 + WTERMSIG(status) : WEXITSTATUS(status);
}

}  // namespace

TEST_CASE("lines are added to a file, the heading before the first") {
  const TempFolder folder;
  const fs::path path = folder.path() / "log";
  must_append(path, "one\n");
  must_append(path, "two\n");
  CHECK(read_text(path) == heading + "one\ntwo\n");
  write_text(path, "");
  must_append(path, "three\n");
  CHECK(read_text(path) == heading + "three\n");
}

TEST_CASE("a last line without an end is marked before the next") {
  const TempFolder folder;
  const fs::path path = folder.path() / "log";
  write_text(path, "one\ntw");
  CHECK(append(path, "three\n").ended_unfinished);
  CHECK(read_text(path) == "one\ntw  # cut short\nthree\n");
  CHECK_FALSE(append(path, "four\n").ended_unfinished);
}

TEST_CASE("a process killed at any byte of its write loses no line, and the next adds its own") {
  const TempFolder folder;
  const fs::path path = folder.path() / "log";
  const std::string line = "a line to be cut\n";
  for (const std::string before : {"", "# a heading\none\n", "# a heading\none\nhalf a li"}) {
    const std::string between = before.ends_with("li") ? "  # cut short\n" : "";
    const std::string whole = before + (before.empty() ? heading : between) + line;
    for (std::size_t end = before.size(); end < whole.size(); ++end) {
      write_text(path, before);
      const int code = in_limited_process(end, SIG_DFL, [&] { return !append(path, line).error; });
      CHECK(code == 128 + SIGXFSZ);
      CHECK(read_text(path) == whole.substr(0, end));
      must_append(path, "next\n");
      const std::string after = read_text(path);
      CHECK(after.starts_with(before));
      CHECK(after.ends_with(end == 0 ? heading + "next\n" : "\nnext\n"));
    }
  }
}

TEST_CASE("where there is no room nothing is added") {
  const TempFolder folder;
  const fs::path path = folder.path() / "log";
  const std::string before = heading + "one\n";
  write_text(path, before);
  const int code = in_limited_process(before.size() + 3, SIG_IGN,
                                      [&] { return append(path, "another\n").error.has_value(); });
  CHECK(code == 0);
  CHECK(read_text(path) == before);
}

TEST_CASE("lines added by many processes at once all land whole") {
  const TempFolder folder;
  const fs::path path = folder.path() / "log";
  constexpr int processes = 8;
  constexpr int lines = 25;
  std::vector<pid_t> children;
  for (int i = 0; i < processes; ++i) {
    const pid_t child = ::fork();
    if (child == 0) {
      bool done = true;
      for (int k = 0; k < lines; ++k) {
        const std::string line = std::to_string(i).append(" ").append(std::to_string(k)) + "\n";
        done = done && !append(path, line).error;
      }
      ::_exit(done ? 0 : 1);
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(status == 0);
  }
  const std::string text = read_text(path);
  CHECK(text.starts_with(heading));
  CHECK(text.find(heading, 1) == std::string::npos);
  std::size_t expected = heading.size();
  for (int i = 0; i < processes; ++i) {
    std::size_t last = 0;
    for (int k = 0; k < lines; ++k) {
      const std::string line = std::to_string(i).append(" ").append(std::to_string(k)) + "\n";
      const std::size_t at = text.find("\n" + line);
      REQUIRE(at != std::string::npos);
      CHECK(at > last);
      last = at;
      expected += line.size();
    }
  }
  CHECK(text.size() == expected);
}

TEST_CASE("what is no file is refused, a link is followed") {
  const TempFolder folder;
  const fs::path path = folder.path() / "log";
  CHECK(append(folder.path(), "x\n").error);
  CHECK(append(folder.path() / "none" / "log", "x\n").error);
  const fs::path pipe = folder.path() / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  CHECK(append(pipe, "x\n").error);
  fs::create_symlink("log", folder.path() / "link");
  must_append(folder.path() / "link", "one\n");
  CHECK(read_text(path) == heading + "one\n");
  CHECK(fs::is_symlink(folder.path() / "link"));
}

}  // namespace slabtide::test
