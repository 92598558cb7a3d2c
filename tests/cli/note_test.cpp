#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <csignal>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "job/records/journal_line.h"
#include "job/records/read_journal.h"
#include "slabtide/job/reading/read_job.h"
#include "support/run_program.h"

// `slabtide note` in real processes: killed while writing, and many at once.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path source_dir = SLABTIDE_SOURCE_DIR;

/// The demo job in its own folder, and its journal.
class NotedJob {
 public:
  NotedJob() : job_(read_job(read_text(source_dir / "data/demo/spring.toml")).value.value()) {
    fs::copy_file(source_dir / "data/demo/spring.toml", folder_.path() / "job.toml");
  }

  std::string journal() const { return read_text(path()); }
  bool has_journal() const { return fs::exists(path()); }
  void put(const std::string& text) const { write_text(path(), text); }

  /// The observations that count; fails the test if the journal cannot be read.
  std::vector<Observation> readings() const {
    const std::string text = journal();
    const Parsed<Journal> reading = read_journal(text, job_);
    INFO(render_all(reading.diagnostics, "journal", text));
    REQUIRE(reading.ok());
    return reading.value->readings;
  }

  Outcome note(std::vector<std::string> words, std::vector<std::string> before = {}) const {
    before.insert(before.end(), {SLABTIDE_PROGRAM, "note", "job.toml"});
    before.insert(before.end(), words.begin(), words.end());
    return run_program(before, folder_.path());
  }

  /// Runs `note` while the test holds the lock on the journal; once the program is waiting for it,
  /// the journal gets another line.
  Outcome note_meanwhile(const std::vector<std::string>& words, const std::string& line) const {
    const int held = ::open(path().c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
    REQUIRE(::flock(held, LOCK_EX) == 0);
    Outcome outcome;
    std::atomic<bool> done{false};
    std::thread other([&] {
      outcome = note(words);
      done = true;
    });
    while (!done && !is_waited_for()) std::this_thread::yield();
    const bool written = ::write(held, line.data(), line.size()) >= 0;
    ::close(held);
    other.join();
    CHECK(written);
    return outcome;
  }

 private:
  /// The kernel's list of locks has a line with an arrow for each lock that someone waits for.
  bool is_waited_for() const {
    struct stat status {};
    if (::stat(path().c_str(), &status) != 0) return false;
    std::istringstream locks(read_text("/proc/locks"));
    const std::string number = fmt::format(":{} ", status.st_ino);
    for (std::string each; std::getline(locks, each);) {
      if (each.find("->") != each.npos && each.find(number) != each.npos) return true;
    }
    return false;
  }

  fs::path path() const { return folder_.path() / "job.journal"; }

  TempFolder folder_;
  Job job_;
};

const std::vector<std::string> firm{"--zone", "landing", "--at", "12:05", "no-dent"};
const std::vector<std::string> thumb{"--zone", "walk", "--at", "11:40", "thumbprint"};

}  // namespace

TEST_CASE("killed at any byte of its line, note loses nothing that was there") {
  const NotedJob job;
  REQUIRE(job.note(firm).code == 0);
  const std::string one = job.journal();
  REQUIRE(job.note(thumb).code == 0);
  const std::string two = job.journal();
  REQUIRE(two.starts_with(one));
  for (std::size_t end = one.size(); end < two.size(); ++end) {
    CAPTURE(end);
    job.put(one);
    // prlimit (util-linux): the kernel writes up to the limit and then ends the process.
    const Outcome killed = job.note(thumb, {"prlimit", fmt::format("--fsize={}", end)});
    CHECK(killed.code == 128 + SIGXFSZ);
    CHECK(job.journal() == two.substr(0, end));
    REQUIRE(job.readings().size() == 1);
    CHECK(job.readings()[0].kind == ObservationKind::print_firm);
    REQUIRE(job.note(thumb).code == 0);
    REQUIRE(job.readings().size() == 2);
    CHECK(job.readings()[1].kind == ObservationKind::thumbprint);
  }
}

TEST_CASE("killed at any byte of the first line, and of an undo") {
  const NotedJob job;
  REQUIRE(job.note(firm).code == 0);
  const std::string one = job.journal();
  constexpr std::size_t step = 7;  // the comments before the line are long
  for (std::size_t end = 0; end < one.size(); end += step) {
    CAPTURE(end);
    job.put("");
    CHECK(job.note(firm, {"prlimit", fmt::format("--fsize={}", end)}).code == 128 + SIGXFSZ);
    CHECK(job.readings().empty());
    REQUIRE(job.note(thumb).code == 0);
    CHECK(job.readings().size() == 1);
  }
  for (std::size_t end = one.size(); end < one.size() + 5; ++end) {
    job.put(one);
    CHECK(job.note({"--undo"}, {"prlimit", fmt::format("--fsize={}", end)}).code == 128 + SIGXFSZ);
    CHECK(job.readings().size() == 1);
    REQUIRE(job.note({"--undo"}).code == 0);
    CHECK(job.readings().empty());
  }
}

TEST_CASE("notes made at once all land") {
  const NotedJob job;
  constexpr int writers = 4;
  constexpr int notes = 10;
  std::vector<std::thread> threads;
  std::vector<int> failed(writers, 0);
  for (int i = 0; i < writers; ++i) {
    threads.emplace_back([&job, &failed, i] {
      for (int k = 0; k < notes; ++k) {
        const std::string at = fmt::format("1{}:{}", i, k + 10);
        const Outcome done = job.note({"--zone", "pad", "--at", at, "surface", "88"});
        if (done.code != 0) failed[static_cast<std::size_t>(i)] += 1;
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  CHECK(failed == std::vector<int>(writers, 0));
  CHECK(job.readings().size() == writers * notes);
}

TEST_CASE("an undo made twice at once strikes one reading once") {
  const NotedJob job;
  constexpr int rounds = 40;
  for (int i = 0; i < rounds; ++i) {
    CAPTURE(i);
    job.put("");
    REQUIRE(job.note(firm).code == 0);
    std::vector<int> codes(2, -1);
    std::thread one([&] { codes[0] = job.note({"--undo"}).code; });
    std::thread other([&] { codes[1] = job.note({"--undo"}).code; });
    one.join();
    other.join();
    CHECK(codes[0] + codes[1] == 2);  // one succeeds, the other finds nothing to undo
    CHECK(job.readings().empty());
  }
}

TEST_CASE("what was noted while it waited for the journal decides what note adds") {
  struct Case {
    std::vector<std::string> words;
    std::string before;
    std::string meanwhile;
    std::size_t readings;
  };
  const std::string reading = "2026-05-14 12:05  no-dent  landing\n";
  const std::string placed = "2026-05-14 08:15  placed  landing\n";
  const std::vector<std::string> place{"--zone", "landing", "--at", "08:05", "placed"};
  for (const Case& each : {Case{{"--undo"}, reading, "undo\n", 0}, Case{place, "", placed, 1}}) {
    CAPTURE(each.meanwhile);
    const NotedJob job;
    job.put(each.before);
    const Outcome waited = job.note_meanwhile(each.words, each.meanwhile);
    CHECK(waited.code == 2);
    CHECK(job.journal() == each.before + each.meanwhile);
    CHECK(job.readings().size() == each.readings);
  }
}

TEST_CASE("an undo of nothing makes no journal") {
  const NotedJob job;
  CHECK(job.note({"--undo"}).code == 2);
  CHECK(!job.has_journal());
}

// Whatever day it is today: on another than the pour's the reading is refused for its day.
TEST_CASE("without --at a reading is of now, at a terminal or not") {
  const NotedJob job;
  const Outcome outcome = job.note({"--zone", "walk", "thumbprint"});
  CHECK(outcome.err.find("--at is missing") == std::string::npos);
  if (outcome.code == 0) {
    CHECK(job.readings().size() == 1);
  } else {
    CHECK(outcome.err.find("slabtide note: time: ") != std::string::npos);
  }
}

}  // namespace slabtide::test
