#include <string>
#include <thread>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <boost/algorithm/string/replace.hpp>

#include "slabtide/job/records/mix_book.h"
#include "support/run_program.h"

// `slabtide learn` in real processes: many at once, and repeated.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t jobs = 12;

/// Jobs of one mix, each with its journal, on different days.
class FinishedJobs {
 public:
  FinishedJobs() {
    const fs::path golden = fs::path(SLABTIDE_SOURCE_DIR) / "tests/cli/learn";
    const std::string job = read_text(golden / "day.toml");
    const std::string journal = read_text(golden / "day.journal");
    for (std::size_t i = 0; i < jobs; ++i) {
      const auto named = [i](std::string text) {
        boost::algorithm::replace_all(text, "Back pad", fmt::format("Pad {}", i));
        return text;
      };
      write_text(path(fmt::format("{}.toml", i)), named(job));
      write_text(path(fmt::format("{}.journal", i)), named(journal));
    }
  }

  fs::path path(const std::string& name) const { return folder_.path() / name; }
  std::string book() const { return read_text(path("mix-book.toml")); }
  Outcome learn(std::size_t job) const {
    return run_program({SLABTIDE_PROGRAM, "learn", fmt::format("{}.toml", job)}, folder_.path());
  }
  std::size_t pours() const {
    const Parsed<MixBook> reading = read_mix_book(book());
    REQUIRE(reading.ok());
    std::size_t count = 0;
    for (const BookedMix& mix : reading.value->mixes) count += mix.pours.size();
    return count;
  }

 private:
  TempFolder folder_;
};

}  // namespace

TEST_CASE("pours learned at once are all kept, and learned again change nothing") {
  const FinishedJobs finished;
  std::vector<std::thread> threads;
  std::vector<int> codes(jobs, -1);
  for (std::size_t i = 0; i < jobs; ++i) {
    threads.emplace_back([&finished, &codes, i] { codes[i] = finished.learn(i).code; });
  }
  for (std::thread& thread : threads) thread.join();
  CHECK(codes == std::vector<int>(jobs, 0));
  CHECK(finished.pours() == jobs);
  const std::string before = finished.book();
  for (std::size_t i = 0; i < jobs; ++i) CHECK(finished.learn(i).code == 0);
  CHECK(finished.book() == before);
}

TEST_CASE("remarks in the book stay, and a job that fails leaves no book behind") {
  const FinishedJobs finished;
  write_text(finished.path("broken.toml"), "not a job");
  CHECK(run_program({SLABTIDE_PROGRAM, "learn", "broken.toml"}, finished.path("")).code == 2);
  CHECK(!fs::exists(finished.path("mix-book.toml")));
  REQUIRE(finished.learn(0).code == 0);
  std::string book = finished.book();
  boost::algorithm::replace_all(book, "  readings = 2\n", "  readings = 2  # Tom's thumb\n");
  book = "# ours\n" + book + "# end";
  write_text(finished.path("mix-book.toml"), book);
  REQUIRE(finished.learn(0).code == 0);
  CHECK(finished.book() == book);
  REQUIRE(finished.learn(1).code == 0);
  CHECK(finished.pours() == 2);
  CHECK(finished.book().starts_with("# ours\n"));
  CHECK(finished.book().ends_with("# end\n"));
  CHECK(finished.book().find("  readings = 2  # Tom's thumb\n") != std::string::npos);
}

}  // namespace slabtide::test
