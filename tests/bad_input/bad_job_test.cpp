#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/job/read_job.h"
#include "support/run_program.h"

// Each job file here is wrong in one way, or in a few; beside it stands the whole message that
// the user sees. SLABTIDE_BLESS=1 (tools/bless) rewrites the messages.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> job_files() {
  std::vector<fs::path> files;
  for (const auto& entry :
       fs::directory_iterator(fs::path(SLABTIDE_SOURCE_DIR) / "tests/bad_input")) {
    if (entry.path().extension() == ".toml") files.push_back(entry.path());
  }
  std::ranges::sort(files);
  return files;
}

bool only_warns(const fs::path& file) { return file.filename().string().starts_with("warning_"); }

}  // namespace

TEST_CASE("every wrong job file is refused with the message beside it") {
  const auto files = job_files();
  CHECK(files.size() >= 80);
  for (const auto& file : files) {
    CAPTURE(file.filename().string());
    const std::string text = read_text(file);
    const auto reading = read_job(text);
    const std::string message = render_all(reading.diagnostics, file.filename().string(), text);
    const fs::path expected = fs::path(file).replace_extension(".txt");
    if (blessing()) write_text(expected, message);
    CHECK_MESSAGE(difference(read_text(expected), message).empty(),
                  difference(read_text(expected), message));
    CHECK(reading.ok() == only_warns(file));
    CHECK_FALSE(reading.diagnostics.empty());
  }
}

}  // namespace slabtide::test
