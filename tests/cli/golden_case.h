#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace slabtide::test {

/// One run of the program and its expected results: a folder with
///
///   cmd              the words after `slabtide`, one line; 'quoted' and "quoted" words keep
///                    their spaces; NAME=value words before the first other word set the
///                    environment
///   expected_out     standard output, byte for byte; absent: nothing
///   expected_err     standard error, likewise
///   expected_code    the exit code; absent: 0
///   expected_files/  every file that the run makes or changes, and no others
///   expected_fields/ in place of a whole JSON file, its values at a few pointers
///   (json_fields.h)
///
/// and any files that the command reads. The run is made in a copy of the folder, which also
/// contains the project's data/ if the command uses it.
struct GoldenCase {
  std::string name;
  std::filesystem::path folder;
};

/// Every folder under `root` that contains a `cmd`, in order of name.
std::vector<GoldenCase> golden_cases(const std::filesystem::path& root);

/// The results that are compared.
struct Observed {
  std::string out;
  std::string err;
  int code = 0;
  /// Path below the case's folder, and the content, or its fields if these are expected.
  std::map<std::string, std::string> files;

  friend bool operator==(const Observed&, const Observed&) = default;
};

Observed expected_of(const GoldenCase& golden);
Observed run(const GoldenCase& golden, const std::filesystem::path& program,
             const std::filesystem::path& data);

/// Rewrites the case's expected files.
void update(const GoldenCase& golden, const Observed& observed);

/// What differs, for the reader of a failed test; empty if nothing does.
std::string difference(const Observed& expected, const Observed& actual);

/// The words of a command line, and the environment given before them.
struct CommandLine {
  std::map<std::string, std::string> environment;
  std::vector<std::string> words;
};
/// Error: std::invalid_argument on a quote that is not closed.
CommandLine split_command(const std::string& line);

}  // namespace slabtide::test
