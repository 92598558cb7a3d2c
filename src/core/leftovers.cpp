#include "leftovers.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <string>

#include "open_file.h"
#include "unfinished_file.h"

namespace slabtide {

namespace {

namespace fs = std::filesystem;

/// Signals that end the process but leave it time to clean up.
constexpr std::array ending_signals{SIGINT, SIGTERM, SIGHUP, SIGPIPE, SIGQUIT, SIGXFSZ, SIGXCPU};

extern "C" void clear_up_and_end(int signal) {
  const int code = errno;
  remove_all_unfinished();
  errno = code;
  struct sigaction usual {};
  usual.sa_handler = SIG_DFL;
  ::sigaction(signal, &usual, nullptr);
  ::raise(signal);
}

/// A file that is being written is locked by its writer. On file systems without locks nothing is
/// removed.
void remove_if_left(const fs::path& path) {
  const Descriptor file(::open(path.c_str(), O_RDWR | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC));
  struct stat status {};
  if (!file.ok() || ::fstat(file.number(), &status) != 0 || !S_ISREG(status.st_mode)) return;
  if (::flock(file.number(), LOCK_EX | LOCK_NB) != 0 || !is_still(file.number(), path)) return;
  ::unlink(path.c_str());
}

}  // namespace

void remove_unfinished_on_signals() {
  struct sigaction ours {};
  ours.sa_handler = clear_up_and_end;
  for (const int signal : ending_signals) sigaddset(&ours.sa_mask, signal);
  for (const int signal : ending_signals) {
    struct sigaction before {};
    const bool ignored = ::sigaction(signal, nullptr, &before) == 0 && before.sa_handler == SIG_IGN;
    if (!ignored) ::sigaction(signal, &ours, nullptr);
  }
}

void sweep_leftovers(const fs::path& path) {
  const auto target = link_target(path);
  if (!target) return;
  const std::string prefix = unfinished_prefix();
  constexpr std::size_t digits = 16;
  const std::size_t length = prefix.size() + digits + std::string_view(unfinished_ending).size();
  std::error_code problem;
  for (fs::directory_iterator entry(folder_of(*target), problem), end; !problem && entry != end;
       entry.increment(problem)) {
    const std::string name = entry->path().filename().string();
    if (name.size() == length && name.starts_with(prefix) && name.ends_with(unfinished_ending)) {
      remove_if_left(entry->path());
    }
  }
}

}  // namespace slabtide
