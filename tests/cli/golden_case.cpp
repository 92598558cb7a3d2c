#include "cli/golden_case.h"

#include <algorithm>
#include <stdexcept>

#include "cli/json_fields.h"
#include "support/run_program.h"

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;
using Files = std::map<std::string, std::string>;

constexpr auto out_name = "expected_out";
constexpr auto err_name = "expected_err";
constexpr auto code_name = "expected_code";
constexpr auto files_name = "expected_files";
constexpr auto fields_name = "expected_fields";

Files files_below(const fs::path& folder) {
  Files result;
  if (!fs::exists(folder)) return result;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) {
      result[fs::relative(entry.path(), folder).generic_string()] = read_text(entry.path());
    }
  }
  return result;
}

/// Files of `after` that are not in `before` with the same content.
Files made_or_changed(const Files& before, const Files& after) {
  Files result;
  std::set_difference(after.begin(), after.end(), before.begin(), before.end(),
                      std::inserter(result, result.end()));
  return result;
}

/// For files of which only a few fields are expected, replaces the content by these fields.
Files with_fields(Files files, const fs::path& expected_fields) {
  for (const auto& [name, fields] : files_below(expected_fields)) {
    const auto file = files.find(name);
    if (file != files.end()) file->second = json_fields(file->second, fields);
  }
  return files;
}

/// Copies the case without its expected files, as the program should find it.
void lay_out(const GoldenCase& golden, const fs::path& where, const fs::path& data,
             const CommandLine& command) {
  fs::copy(golden.folder, where, fs::copy_options::recursive);
  for (const char* name : {"cmd", out_name, err_name, code_name, files_name, fields_name}) {
    fs::remove_all(where / name);
  }
  const bool names_data = std::ranges::any_of(
      command.words, [](const std::string& word) { return word.starts_with("data/"); });
  if (names_data) fs::copy(data, where / "data", fs::copy_options::recursive);
}

/// Writes the file, or removes it if the text is empty.
void keep(const fs::path& path, const std::string& text) {
  if (text.empty()) {
    fs::remove(path);
  } else {
    write_text(path, text);
  }
}

std::string headed(const std::string& heading, const std::string& text) {
  return text.empty() ? text : heading + "\n" + text;
}

bool sets_environment(const std::string& word) {
  const auto name_ends = word.find('=');
  return name_ends != std::string::npos && name_ends > 0 && word.front() != '-';
}

}  // namespace

std::vector<GoldenCase> golden_cases(const fs::path& root) {
  std::vector<GoldenCase> result;
  for (const auto& entry : fs::directory_iterator(root)) {
    if (fs::exists(entry.path() / "cmd")) {
      result.push_back({entry.path().filename().string(), entry.path()});
    }
  }
  std::ranges::sort(result, {}, &GoldenCase::name);
  return result;
}

Observed expected_of(const GoldenCase& golden) {
  const std::string code = read_text(golden.folder / code_name);
  Files files = files_below(golden.folder / files_name);
  files.merge(files_below(golden.folder / fields_name));
  return {.out = read_text(golden.folder / out_name),
          .err = read_text(golden.folder / err_name),
          .code = code.empty() ? 0 : std::stoi(code),
          .files = std::move(files)};
}

Observed run(const GoldenCase& golden, const fs::path& program, const fs::path& data) {
  const CommandLine command = split_command(read_text(golden.folder / "cmd"));
  const TempFolder folder;
  lay_out(golden, folder.path(), data, command);
  const Files before = files_below(folder.path());
  std::vector<std::string> words = command.words;
  words.insert(words.begin(), program.string());
  Outcome outcome = run_program(words, folder.path(), command.environment);
  return {.out = std::move(outcome.out),
          .err = std::move(outcome.err),
          .code = outcome.code,
          .files = with_fields(made_or_changed(before, files_below(folder.path())),
                               golden.folder / fields_name)};
}

void update(const GoldenCase& golden, const Observed& observed) {
  keep(golden.folder / out_name, observed.out);
  keep(golden.folder / err_name, observed.err);
  keep(golden.folder / code_name,
       observed.code == 0 ? std::string{} : std::to_string(observed.code) + "\n");
  fs::remove_all(golden.folder / files_name);
  for (const auto& [name, text] : observed.files) {
    const bool by_fields = fs::exists(golden.folder / fields_name / name);
    write_text(golden.folder / (by_fields ? fields_name : files_name) / name, text);
  }
}

std::string difference(const Observed& expected, const Observed& actual) {
  std::string result = headed("standard output:", difference(expected.out, actual.out)) +
                       headed("standard error:", difference(expected.err, actual.err));
  if (expected.code != actual.code) {
    result += "exit code: expected " + std::to_string(expected.code) + ", was " +
              std::to_string(actual.code) + "\n";
  }
  for (const auto& [name, text] : expected.files) {
    if (!actual.files.contains(name)) result += "did not write " + name + "\n";
  }
  for (const auto& [name, text] : actual.files) {
    const auto wanted = expected.files.find(name);
    if (wanted == expected.files.end()) {
      result += "wrote " + name + ", which is not expected\n";
    } else {
      result += headed("file " + name + ":", difference(wanted->second, text));
    }
  }
  return result;
}

CommandLine split_command(const std::string& line) {
  std::vector<std::string> words;
  bool in_word = false;
  char quote = '\0';
  for (const char c : line) {
    if (quote == '\0' && (c == ' ' || c == '\n')) {
      in_word = false;
      continue;
    }
    if (!in_word) words.emplace_back();
    in_word = true;
    if (quote == '\0' && (c == '\'' || c == '"')) {
      quote = c;
    } else if (c == quote) {
      quote = '\0';
    } else {
      words.back() += c;
    }
  }
  if (quote != '\0') throw std::invalid_argument("a quote is not closed: " + line);

  CommandLine result;
  const auto first = std::ranges::find_if_not(words, sets_environment);
  for (auto word = words.begin(); word != first; ++word) {
    const auto name_ends = word->find('=');
    result.environment[word->substr(0, name_ends)] = word->substr(name_ends + 1);
  }
  result.words.assign(first, words.end());
  return result;
}

}  // namespace slabtide::test
