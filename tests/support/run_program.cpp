#include "support/run_program.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>
#include <utility>

extern char** environ;

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;
using Environment = std::map<std::string, std::string>;

constexpr std::array passed_on{"PATH",          "TMPDIR",       "ASAN_OPTIONS",
                               "UBSAN_OPTIONS", "LSAN_OPTIONS", "LLVM_PROFILE_FILE"};
constexpr int signal_base = 128;  // as in shells

[[noreturn]] void fail(int error, const std::string& what) {
  throw std::runtime_error(what + ": " + std::system_category().message(error));
}

void check(int error, const std::string& what) {
  if (error != 0) fail(error, what);
}

Environment plain_environment(const fs::path& folder, const Environment& more) {
  Environment result{{"TZ", "UTC"}, {"LC_ALL", "C"}, {"HOME", folder.string()}};
  for (const char* name : passed_on) {
    if (const char* value = std::getenv(name)) result[name] = value;
  }
  for (const auto& [name, value] : more) result[name] = value;
  return result;
}

/// The null-terminated array of pointers that the system calls need; `words` must outlive it.
std::vector<char*> pointers(std::vector<std::string>& words) {
  std::vector<char*> result;
  for (std::string& word : words) result.push_back(word.data());
  result.push_back(nullptr);
  return result;
}

/// The redirections of the three streams and the change of folder before the program starts.
class FileActions {
 public:
  FileActions() { check(posix_spawn_file_actions_init(&actions_), "file actions"); }
  ~FileActions() { posix_spawn_file_actions_destroy(&actions_); }
  FileActions(const FileActions&) = delete;
  FileActions& operator=(const FileActions&) = delete;

  void open(int descriptor, const fs::path& path, int flags) {
    constexpr mode_t owner_only = 0600;
    check(posix_spawn_file_actions_addopen(&actions_, descriptor, path.c_str(), flags, owner_only),
          path.string());
  }
  void enter(const fs::path& folder) {
    check(posix_spawn_file_actions_addchdir_np(&actions_, folder.c_str()), folder.string());
  }
  const posix_spawn_file_actions_t* get() const { return &actions_; }

 private:
  posix_spawn_file_actions_t actions_{};
};

int wait_for(pid_t child) {
  int status = 0;
  while (waitpid(child, &status, 0) < 0) {
    if (errno != EINTR) fail(errno, "waiting for the program");
  }
  return WIFEXITED(status) ? WEXITSTATUS(status) : signal_base + WTERMSIG(status);
}

}  // namespace

Outcome run_program(const std::vector<std::string>& words, const fs::path& folder,
                    const Environment& environment) {
  const TempFolder streams;
  const fs::path out = streams.path() / "out";
  const fs::path err = streams.path() / "err";
  FileActions actions;
  actions.open(STDIN_FILENO, "/dev/null", O_RDONLY);
  actions.open(STDOUT_FILENO, out, O_WRONLY | O_CREAT);
  actions.open(STDERR_FILENO, err, O_WRONLY | O_CREAT);
  actions.enter(folder);

  std::vector<std::string> arguments = words;
  std::vector<std::string> settings;
  for (const auto& [name, value] : plain_environment(folder, environment)) {
    settings.push_back(name + "=" + value);
  }
  pid_t child = 0;
  check(posix_spawnp(&child, words.at(0).c_str(), actions.get(), nullptr,
                     pointers(arguments).data(), pointers(settings).data()),
        words.at(0));
  const int code = wait_for(child);
  return {code, read_text(out), read_text(err)};
}

TempFolder::TempFolder() {
  std::string name = (fs::temp_directory_path() / "slabtide-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) fail(errno, name);
  path_ = name;
}

TempFolder::~TempFolder() {
  std::error_code ignored;  // a folder left in /tmp must not fail the test
  fs::remove_all(path_, ignored);
}

std::string read_text(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

void write_text(const fs::path& path, const std::string& text) {
  fs::create_directories(path.parent_path());
  std::ofstream file(path, std::ios::binary);
  file << text;
  if (!file.flush()) throw std::runtime_error("cannot write " + path.string());
}

std::string difference(const std::string& expected, const std::string& actual) {
  if (expected == actual) return {};
  const TempFolder folder;
  write_text(folder.path() / "expected", expected);
  write_text(folder.path() / "actual", actual);
  const Outcome diff =
      run_program({"diff", "-u", "--label", "expected", "--label", "actual", "expected", "actual"},
                  folder.path());
  return diff.out + diff.err;
}

bool updating_golden() { return std::getenv("SLABTIDE_UPDATE_GOLDEN") != nullptr; }

}  // namespace slabtide::test
