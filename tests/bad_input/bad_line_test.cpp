#include <filesystem>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "bad_input/messages.h"
#include "cli/golden_case.h"
#include "support/run_program.h"

// Wrong command lines, each run in a folder with the spring demo as job.toml; the message is all
// that the program prints.

namespace slabtide::test {

TEST_CASE("every wrong command line") {
  namespace fs = std::filesystem;
  const TempFolder folder;
  fs::copy(fs::path(SLABTIDE_SOURCE_DIR) / "data/demo/spring.toml", folder.path() / "job.toml");
  check_messages(".line", 67, [&folder](const std::string&, const std::string& text) {
    CommandLine line = split_command(text.substr(0, text.find('\n')));
    line.words.insert(line.words.begin(), SLABTIDE_PROGRAM);
    const Outcome outcome = run_program(line.words, folder.path(), line.environment);
    CHECK(outcome.code == 2);
    return Told{outcome.out + outcome.err, outcome.code == 0};
  });
}

}  // namespace slabtide::test
