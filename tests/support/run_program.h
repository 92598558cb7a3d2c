#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace slabtide::test {

/// The results of a finished program: its exit code (128 + signal if a signal ended it) and its
/// output.
struct Outcome {
  int code = 0;
  std::string out;
  std::string err;
};

/// Runs `words[0]` with the other words as arguments in `folder`, with empty standard input. The
/// environment contains PATH, TMPDIR and the sanitizers' settings from outside, TZ=UTC, LC_ALL=C
/// and HOME=folder, then `environment`. Error: std::runtime_error if it cannot be started.
Outcome run_program(const std::vector<std::string>& words, const std::filesystem::path& folder,
                    const std::map<std::string, std::string>& environment = {});

/// A new empty folder that is removed with the object.
class TempFolder {
 public:
  TempFolder();
  ~TempFolder();
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;

  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

/// The whole file; empty if it does not exist.
std::string read_text(const std::filesystem::path& path);
void write_text(const std::filesystem::path& path, const std::string& text);

/// The lines that differ, as `diff -u` shows them; empty if the texts are equal.
std::string difference(const std::string& expected, const std::string& actual);

/// True if SLABTIDE_UPDATE_GOLDEN is set: expected files are rewritten instead of compared.
bool updating_golden();

}  // namespace slabtide::test
