#include "desktop_browser.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <string>
#include <thread>

#include <fmt/format.h>

#include "core/utf8.h"

namespace slabtide {

namespace {

/// Starts it in a session of its own, without this program's output; 0 if it cannot be started.
pid_t start_opener(const std::string& shown) {
  std::string name = "xdg-open";
  std::string page = shown;
  char* const words[] = {name.data(), page.data(), nullptr};  // NOLINT(modernize-avoid-c-arrays)
  posix_spawn_file_actions_t files;
  posix_spawnattr_t settings;
  posix_spawn_file_actions_init(&files);
  posix_spawnattr_init(&settings);
  posix_spawnattr_setflags(&settings, POSIX_SPAWN_SETSID);
  for (const int output : {STDOUT_FILENO, STDERR_FILENO}) {
    posix_spawn_file_actions_addopen(&files, output, "/dev/null", O_WRONLY, 0);
  }
  pid_t process = 0;
  const int code = ::posix_spawnp(&process, words[0], &files, &settings, words, environ);
  posix_spawnattr_destroy(&settings);
  posix_spawn_file_actions_destroy(&files);
  return code == 0 ? process : 0;
}

/// Whether it has not failed when it ends, or after three seconds.
bool seems_well(pid_t process) {
  constexpr auto step = std::chrono::milliseconds(50);
  constexpr int steps = 60;
  for (int i = 0; i < steps; ++i) {
    int status = 0;
    if (::waitpid(process, &status, WNOHANG) == process) {
      return WIFEXITED(status) && WEXITSTATUS(status) == 0;
    }
    std::this_thread::sleep_for(step);
  }
  return true;
}

}  // namespace

std::optional<FileError> open_in_browser(const std::filesystem::path& page) {
  const pid_t process = start_opener(page.string());
  if (process != 0 && seems_well(process)) return std::nullopt;
  return FileError{process == 0 ? "there is no xdg-open here to open a browser with"
                                : "no browser could be opened",
                   fmt::format("open this file in any browser: {}", printable(page.string()))};
}

}  // namespace slabtide
