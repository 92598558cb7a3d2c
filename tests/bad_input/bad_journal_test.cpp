#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/job/read_job.h"
#include "slabtide/job/read_journal.h"
#include "support/run_program.h"

// Journals of the spring demo's day that are wrong, each with the whole message beside it, as for
// the job files.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path source_dir = SLABTIDE_SOURCE_DIR;

std::vector<fs::path> journals() {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(source_dir / "tests/bad_input")) {
    if (entry.path().extension() == ".journal") files.push_back(entry.path());
  }
  std::ranges::sort(files);
  return files;
}

}  // namespace

TEST_CASE("every wrong journal is refused with the message beside it") {
  const auto job = read_job(read_text(source_dir / "data/demo/spring.toml"));
  REQUIRE(job.ok());
  const auto files = journals();
  CHECK(files.size() >= 7);
  for (const auto& file : files) {
    CAPTURE(file.filename().string());
    const std::string text = read_text(file);
    const auto reading = read_journal(text, *job.value);
    const std::string message = render_all(reading.diagnostics, file.filename().string(), text);
    const fs::path expected = fs::path(file).replace_extension(".txt");
    if (blessing()) write_text(expected, message);
    CHECK_MESSAGE(difference(read_text(expected), message).empty(),
                  difference(read_text(expected), message));
    CHECK(reading.ok() == file.filename().string().starts_with("warning_"));
    CHECK_FALSE(reading.diagnostics.empty());
  }
}

}  // namespace slabtide::test
