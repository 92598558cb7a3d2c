#include "bad_input/messages.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>
#include <vector>

#include <doctest/doctest.h>

#include "bad_input/cases.h"
#include "support/run_program.h"

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

fs::path folder() { return fs::path(SLABTIDE_SOURCE_DIR) / "tests/bad_input"; }

std::vector<fs::path> files_ending(std::string_view ending) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder())) {
    if (entry.path().extension() == ending) files.push_back(entry.path());
  }
  std::ranges::sort(files);
  return files;
}

/// Tries the inputs of one ending in turn; none may occur twice under different names.
class Tries {
 public:
  explicit Tries(const Teller& tell) : tell_(tell) {}

  /// Compares the message about an input with the expected one.
  std::string told_of(const std::string& name, const std::string& input,
                      const std::string& expected) {
    CAPTURE(name);
    CHECK_MESSAGE(names_.insert(name).second, "another case has this name");
    const auto twin = inputs_.emplace(input, name);
    CHECK_MESSAGE(twin.second, "the same input as ", twin.first->second);
    const Told told = tell_(name, input);
    if (!updating_golden() && told.message != expected) {
      CHECK_MESSAGE(false, difference(expected, told.message));
    }
    CHECK(told.accepted == name.starts_with("warning_"));
    CHECK_FALSE(told.message.empty());
    return told.message;
  }

  std::size_t count() const { return names_.size(); }

 private:
  const Teller& tell_;
  std::set<std::string> names_;
  std::map<std::string, std::string> inputs_;  // with the name they were first seen under
};

void try_files(std::string_view ending, Tries& tries) {
  for (const auto& file : files_ending(ending)) {
    const fs::path expected = fs::path(file).replace_extension(".txt");
    const std::string told =
        tries.told_of(file.filename().string(), read_text(file), read_text(expected));
    if (updating_golden()) write_text(expected, told);
  }
}

void try_tables(std::string_view ending, Tries& tries) {
  for (const auto& file : files_ending(".cases")) {
    const std::string text = read_text(file);
    CaseTable table = parse_cases(text);
    CHECK_MESSAGE(case_table_text(table) == text, file.filename().string());
    for (Case& one : table.cases) {
      if (!one.name.ends_with(ending)) continue;
      one.message = tries.told_of(one.name, case_input(one, folder() / "base"), one.message);
    }
    if (updating_golden()) write_text(file, case_table_text(table));
  }
}

}  // namespace

void check_messages(std::string_view ending, std::size_t min_count, const Teller& tell) {
  Tries tries(tell);
  try_files(ending, tries);
  try_tables(ending, tries);
  CHECK(tries.count() >= min_count);
}

}  // namespace slabtide::test
