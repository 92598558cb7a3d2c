#include "unfinished_file.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/file.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <climits>
#include <csignal>
#include <random>
#include <thread>
#include <utility>

#include <fmt/format.h>

#include "open_file.h"

namespace slabtide {

namespace {

namespace fs = std::filesystem;

constexpr int max_names = 100;
constexpr std::size_t max_at_once = 256;

/// The names of files being written. Static, because a signal handler can reach nothing else.
struct Register {
  std::array<std::atomic<const char*>, max_at_once> names{};
  std::atomic<int> being_made{0};
  std::atomic<bool> ending{false};
};

Register& the_register() {
  static constinit Register made;
  return made;
}

/// The process is ending: a thread that gets here must not change what the handler sees.
[[noreturn]] void wait_for_the_end() {
  for (;;) ::pause();
}

/// While a file is being created, no handler may run on this thread, because the handler waits for
/// creations to finish.
class NoSignals {
 public:
  NoSignals() {
    sigset_t all;
    sigfillset(&all);
    pthread_sigmask(SIG_BLOCK, &all, &before_);
  }
  ~NoSignals() { pthread_sigmask(SIG_SETMASK, &before_, nullptr); }
  NoSignals(const NoSignals&) = delete;
  NoSignals& operator=(const NoSignals&) = delete;
  NoSignals(NoSignals&&) = delete;
  NoSignals& operator=(NoSignals&&) = delete;

 private:
  sigset_t before_{};
};

std::size_t enter(const char* name) {
  for (;;) {
    for (std::size_t i = 0; i < max_at_once; ++i) {
      const char* nobody = nullptr;
      if (the_register().names[i].compare_exchange_strong(nobody, name)) return i;
    }
    std::this_thread::yield();
  }
}

/// A handler that started first may still be reading the name.
void leave(std::size_t slot) {
  the_register().names[slot] = nullptr;
  if (the_register().ending) wait_for_the_end();
}

/// Creates a new file that nobody else has. Returns its descriptor, or -1 with errno.
int open_new(const char* name) {
  const NoSignals quiet;
  Register& reg = the_register();
  reg.being_made += 1;
  if (reg.ending) {
    reg.being_made -= 1;
    wait_for_the_end();
  }
  const int number = ::open(name, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, new_file_mode);
  const int code = errno;
  reg.being_made -= 1;
  errno = code;
  return number;
}

/// Closing may be what reports a full network disk, but the lock must stay; so a copy is closed.
int close_a_copy(int descriptor) {
  const int copy = ::fcntl(descriptor, F_DUPFD_CLOEXEC, 0);
  return copy >= 0 && ::close(copy) != 0 ? errno : 0;
}

}  // namespace

std::string unfinished_prefix() {
  std::array<char, HOST_NAME_MAX + 1> host{};
  static_cast<void>(::gethostname(host.data(), HOST_NAME_MAX));
  constexpr std::uint32_t fnv_start = 2166136261U;  // FNV-1a, 32 bits
  constexpr std::uint32_t fnv_prime = 16777619U;
  std::uint32_t hash = fnv_start;
  for (const char* c = host.data(); *c != '\0'; ++c) {
    hash = (hash ^ static_cast<unsigned char>(*c)) * fnv_prime;
  }
  return fmt::format(".slabtide-{:08x}-", hash);
}

UnfinishedFile::UnfinishedFile(fs::path target) : target_(std::move(target)) {
  std::random_device random;
  for (int i = 0; i < max_names; ++i) {
    name_ = (folder_of(target_) / fmt::format("{}{:08x}{:08x}{}", unfinished_prefix(), random(),
                                              random(), unfinished_ending))
                .string();
    create();
    if (code_ != EEXIST) return;
  }
}

/// EEXIST if another process was faster, or removed this file as a leftover before it was locked.
void UnfinishedFile::create() {
  slot_ = enter(name_.c_str());
  descriptor_ = open_new(name_.c_str());
  code_ = descriptor_ < 0 ? errno : take_lock(descriptor_);
  if (code_ == 0 && !is_still(descriptor_, name_)) code_ = EEXIST;
  if (code_ == 0) return;
  if (descriptor_ >= 0) remove();
  leave(slot_);
}

void UnfinishedFile::remove() {
  if (is_still(descriptor_, name_)) ::unlink(name_.c_str());
  ::close(std::exchange(descriptor_, -1));
}

UnfinishedFile::~UnfinishedFile() {
  if (descriptor_ < 0) return;
  remove();
  leave(slot_);
}

int UnfinishedFile::put_in_place() {
  // File systems that cannot sync report EINVAL.
  if (::fsync(descriptor_) != 0 && errno != EINVAL) return errno;
  if (const int code = close_a_copy(descriptor_); code != 0) return code;
  return ::rename(name_.c_str(), target_.c_str()) == 0 ? 0 : errno;
}

void remove_all_unfinished() {
  Register& reg = the_register();
  reg.ending = true;
  while (reg.being_made != 0) ::poll(nullptr, 0, 1);
  for (const std::atomic<const char*>& name : reg.names) {
    if (const char* text = name.load(); text != nullptr) ::unlink(text);
  }
}

}  // namespace slabtide
