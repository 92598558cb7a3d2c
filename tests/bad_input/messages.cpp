#include "bad_input/messages.h"

#include <algorithm>
#include <filesystem>
#include <vector>

#include <doctest/doctest.h>

#include "support/run_program.h"

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> files_ending(std::string_view ending) {
  std::vector<fs::path> files;
  for (const auto& entry :
       fs::directory_iterator(fs::path(SLABTIDE_SOURCE_DIR) / "tests/bad_input")) {
    if (entry.path().extension() == ending) files.push_back(entry.path());
  }
  std::ranges::sort(files);
  return files;
}

}  // namespace

void check_messages(std::string_view ending, std::size_t at_least, const Teller& tell) {
  const auto files = files_ending(ending);
  CHECK(files.size() >= at_least);
  for (const auto& file : files) {
    const std::string name = file.filename().string();
    CAPTURE(name);
    const Told told = tell(name, read_text(file));
    const fs::path expected = fs::path(file).replace_extension(".txt");
    if (updating_golden()) write_text(expected, told.message);
    CHECK_MESSAGE(difference(read_text(expected), told.message).empty(),
                  difference(read_text(expected), told.message));
    CHECK(told.accepted == name.starts_with("warning_"));
    CHECK_FALSE(told.message.empty());
  }
}

}  // namespace slabtide::test
