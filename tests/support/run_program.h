#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace slabtide::test {

/// What a finished program left: its exit code (128 + signal where one ended it) and its texts.
struct Outcome {
  int code = 0;
  std::string out;
  std::string err;
};

/// Runs `words[0]` with the rest as arguments in `folder`, its standard input empty. The program
/// sees a plain environment: PATH, TMPDIR and the sanitizers' own settings from outside,
/// TZ=UTC, LC_ALL=C, HOME=folder, then `environment`.
/// Error: std::runtime_error where it cannot be started.
Outcome run_program(const std::vector<std::string>& words, const std::filesystem::path& folder,
                    const std::map<std::string, std::string>& environment = {});

/// A new empty folder, gone with the object.
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

/// The whole file; empty where there is none.
std::string read_text(const std::filesystem::path& path);
void write_text(const std::filesystem::path& path, const std::string& text);

/// Lines that differ, as `diff -u` tells them; empty where the texts are the same.
std::string difference(const std::string& expected, const std::string& actual);

/// True where SLABTIDE_UPDATE_GOLDEN is set: expected files are rewritten, not compared.
bool updating_golden();

}  // namespace slabtide::test
