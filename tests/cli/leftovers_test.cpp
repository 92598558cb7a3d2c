#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <csignal>
#include <filesystem>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "core/leftovers.h"
#include "core/unfinished_file.h"
#include "slabtide/core/files.h"
#include "support/run_program.h"

// Files that are half-written when a signal comes, or were left by a killed run.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> names_in(const fs::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) {
    names.push_back(entry.path().filename().string());
  }
  std::ranges::sort(names);
  return names;
}

/// Ends a process by a signal while it is writing `target`; returns its status.
int end_while_writing(const fs::path& target, int signal, bool handled) {
  std::array<int, 2> told{};
  REQUIRE(::pipe(told.data()) == 0);
  const pid_t child = ::fork();
  if (child == 0) {
    if (handled) remove_unfinished_on_signals();
    const UnfinishedFile file(target);
    static_cast<void>(::write(told[1], file.code() == 0 ? "y" : "n", 1));
    for (;;) ::pause();
  }
  char ready = 'n';
  REQUIRE(::read(told[0], &ready, 1) == 1);
  REQUIRE(ready == 'y');
  CHECK(names_in(target.parent_path()).size() == 1);
  ::kill(child, signal);
  int status = 0;
  while (::waitpid(child, &status, 0) < 0) REQUIRE(errno == EINTR);
  ::close(told[0]);
  ::close(told[1]);
  return status;
}

}  // namespace

TEST_CASE("a signal that ends the process takes what is half written with it") {
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
    CAPTURE(signal);
    const TempFolder folder;
    const int status = end_while_writing(folder.path() / "day.html", signal, true);
    CHECK(WIFSIGNALED(status));
    CHECK(WTERMSIG(status) == signal);
    CHECK(names_in(folder.path()).empty());
  }
}

TEST_CASE("the program itself is ended so, and an ignored signal stays ignored") {
  const TempFolder folder;
  // Sent by the shell's own kill: the program must end by the signal, not with an exit code.
  const std::string line =
      "mkfifo gate; \"$0\" quick --place 44.9,-91.9 --date 2026-05-14 --high 71 --low 48 > gate & "
      "pid=$!; kill -TERM $pid; wait $pid; echo $?";
  const Outcome ended = run_program({"/bin/bash", "-c", line, SLABTIDE_PROGRAM}, folder.path());
  CHECK(ended.out == "143\n");
  const Outcome ignored = run_program(
      {"/bin/bash", "-c", "trap '' HUP; exec \"$0\" starter --date 2026-05-14 --write job.toml",
       SLABTIDE_PROGRAM},
      folder.path());
  CHECK(ignored.code == 0);
}

TEST_CASE("what a killed run left is swept, what is being written is not") {
  const TempFolder folder;
  const fs::path target = folder.path() / "job.toml";
  const int status = end_while_writing(target, SIGKILL, true);
  REQUIRE(WIFSIGNALED(status));
  REQUIRE(names_in(folder.path()).size() == 1);
  const std::string left = names_in(folder.path()).front();
  // Files of others: a name like ours but from another machine, a name that is not ours, a link.
  write_text(folder.path() / ".slabtide-00000000-0123456789abcdef.part", "another's");
  write_text(folder.path() / "notes.part", "theirs");
  const UnfinishedFile alive(target);
  REQUIRE(alive.code() == 0);
  REQUIRE(names_in(folder.path()).size() == 4);
  const Outcome written = run_program(
      {SLABTIDE_PROGRAM, "starter", "--date", "2026-05-14", "--write", "job.toml"}, folder.path());
  CHECK(written.code == 0);
  CHECK(!fs::exists(folder.path() / left));
  CHECK(names_in(folder.path()).size() == 4);
  CHECK(fs::exists(target));
}

TEST_CASE("root leaves a file it replaces to its owner") {
  if (::geteuid() != 0) {
    MESSAGE("needs root");
    return;
  }
  const TempFolder folder;
  const fs::path path = folder.path() / "day.txt";
  write_text(path, "old");
  constexpr uid_t user = 12345;
  constexpr gid_t group = 23456;
  REQUIRE(::chown(path.c_str(), user, group) == 0);
  REQUIRE(::chmod(path.c_str(), 0640) == 0);
  CHECK(!replace_file(path, "new"));
  struct stat status {};
  REQUIRE(::stat(path.c_str(), &status) == 0);
  CHECK(status.st_uid == user);
  CHECK(status.st_gid == group);
  CHECK((status.st_mode & 07777U) == 0640);
  CHECK(read_text(path) == "new");
}

}  // namespace slabtide::test
