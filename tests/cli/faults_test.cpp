#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "support/run_program.h"

// Things the machine may refuse: disk space, a folder, the time-zone database, the reader of a
// pipe, a home folder, the usual locale. The program reports it in words, leaves existing files
// unchanged, and never prints a different number because of it.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;
using Environment = std::map<std::string, std::string>;

constexpr int input_wrong = 2;
constexpr int could_not = 1;

/// A folder with the spring demo as job.toml.
class JobFolder {
 public:
  JobFolder() {
    fs::copy(fs::path(SLABTIDE_SOURCE_DIR) / "data/demo/spring.toml", folder_.path() / "job.toml");
  }
  fs::path path() const { return folder_.path(); }

  Outcome run(std::vector<std::string> words, const Environment& environment = {}) const {
    words.insert(words.begin(), SLABTIDE_PROGRAM);
    return run_program(words, path(), environment);
  }
  /// Where a build that counts lines can write its counts, whichever user it runs as.
  Environment counts_elsewhere() const {
    fs::permissions(counts_.path(), fs::perms::all);
    return {{"GCOV_PREFIX", counts_.path().string()}};
  }
  /// Runs a shell command; "$0" is the program.
  Outcome shell(const std::string& line, const Environment& environment = {}) const {
    return run_program({"/bin/bash", "-c", line, SLABTIDE_PROGRAM}, path(), environment);
  }

 private:
  TempFolder folder_;
  TempFolder counts_;
};

const std::vector<std::string> quick_plan{"plan", "job.toml", "--draws",
                                          "0",    "--now",    "2026-05-13T18:00"};

std::vector<std::string> plan_writing(const std::string& path) {
  std::vector<std::string> words = quick_plan;
  words.insert(words.end(), {"--write", path});
  return words;
}

}  // namespace

TEST_CASE("a full disk is told, by what is written and by what is printed") {
  const JobFolder job;
  // A device has no suitable ending, so a link with the right name leads to it.
  fs::create_symlink("/dev/full", job.path() / "day.json");
  const Outcome written = job.run(plan_writing("day.json"));
  CHECK(written.code == could_not);
  CHECK(written.err ==
        "day.json: cannot write \"day.json\": the disk is full\n"
        "  Make room, or choose another place\n");
  const Outcome printed =
      job.shell("\"$0\" plan job.toml --draws 0 --now 2026-05-13T18:00 > /dev/full");
  CHECK(printed.code == could_not);
  CHECK(printed.err == "slabtide: the output could not all be written\n");
}

TEST_CASE("where a file's size is at its limit, what was there stays and nothing is left behind") {
  const JobFolder job;
  const std::string yesterdays = "{\"slabtide\": {\"version\": \"0.1.0\", \"schema\": 1}}\n";
  write_text(job.path() / "day.json", yesterdays);
  // Files are limited to a kilobyte, as when a disk fills up halfway.
  const Outcome outcome = job.shell(
      "trap '' XFSZ; ulimit -f 1; exec \"$0\" plan job.toml --draws 0 --now 2026-05-13T18:00 "
      "--write day.json | cat",
      job.counts_elsewhere());
  CHECK(outcome.err.starts_with("day.json: cannot write \"day.json\": "));
  CHECK(read_text(job.path() / "day.json") == yesterdays);
  for (const auto& entry : fs::directory_iterator(job.path())) {
    const std::string name = entry.path().filename().string();
    CHECK((name == "job.toml" || name == "day.json"));
  }
}

TEST_CASE("a folder that takes no file is told") {
  // The tests may run as root, whom permissions do not stop: so a file in place of a folder, and a
  // file system that cannot be written to.
  const JobFolder job;
  const Outcome below_file = job.run(plan_writing("job.toml/day.json"));
  CHECK(below_file.code == could_not);
  CHECK(
      below_file.err ==
      "job.toml/day.json: cannot write \"job.toml/day.json\": a part of the path is a file, not a "
      "folder\n  Check the path\n");
  const Outcome in_proc = job.run(plan_writing("/proc/day.json"));
  CHECK(in_proc.code == could_not);
  CHECK(in_proc.err.starts_with("/proc/day.json: cannot write \"/proc/day.json\": "));
  const Outcome noted =
      job.run({"note", "job.toml/x.toml", "--at", "11:05", "--zone", "landing", "thumbprint"});
  CHECK(noted.code == input_wrong);
}

TEST_CASE("a file nobody may write to stays as it is") {
  const JobFolder job;
  if (!fs::exists("/usr/bin/setpriv") ||
      run_program({"/usr/bin/id", "-u"}, job.path()).out != "0\n") {
    MESSAGE("needs root and setpriv to become someone else: left out");
    return;
  }
  // As user nobody in a folder that belongs to root: reading works, writing is refused.
  for (fs::path each = job.path(); each != each.root_path(); each = each.parent_path()) {
    if (each == fs::temp_directory_path()) break;
    fs::permissions(each, fs::perms::others_read | fs::perms::others_exec, fs::perm_options::add);
  }
  fs::permissions(job.path() / "job.toml", fs::perms::others_read, fs::perm_options::add);
  const std::string as_nobody =
      "exec /usr/bin/setpriv --reuid 65534 --regid 65534 --clear-groups \"$0\" ";
  if (job.shell(as_nobody + "--version", job.counts_elsewhere()).code != 0) {
    MESSAGE("the program lies where nobody may read: left out");
    return;
  }
  const Outcome planned =
      job.shell(as_nobody + "plan job.toml --draws 0 --now 2026-05-13T18:00 --write day.json",
                job.counts_elsewhere());
  CHECK(planned.code == could_not);
  CHECK(planned.err ==
        "day.json: cannot write \"day.json\": permission denied\n"
        "  Check who owns the file and its folder, or choose another place\n");
  const Outcome noted = job.shell(
      as_nobody + "note job.toml --now 2026-05-14T12:00 --at 11:05 --zone landing thumbprint",
      job.counts_elsewhere());
  CHECK(noted.code == could_not);
  CHECK(noted.err ==
        "job.journal: cannot write \"job.journal\": permission denied\n"
        "  Check who owns the file and its folder, or choose another place\n");
  // A read-only folder must not keep a plan from being made and printed.
  CHECK(job.shell(as_nobody + "plan job.toml --draws 0 --now 2026-05-13T18:00",
                  job.counts_elsewhere())
            .code == 0);
}

TEST_CASE("a missing time-zone database is told") {
  const JobFolder job;
  const Outcome outcome = job.run(quick_plan, {{"TZDIR", "/nonexistent"}});
  CHECK(outcome.code == input_wrong);
  CHECK(outcome.err ==
        "job.toml:9:13: site.time_zone: there are no time-zone files in \"/nonexistent\"\n"
        "    time_zone = \"America/Chicago\"\n"
        "                ^\n"
        "  Install the package tzdata, or set TZDIR to the folder that holds them\n");
}

TEST_CASE("the library that fetches, where it is missing, is told, and a plan needs none") {
  const JobFolder job;
  const Environment broken{{"LD_LIBRARY_PATH", job.path().string()}};
  std::ofstream(job.path() / "libcurl.so.4") << "not a library";
  const Outcome fetched = job.run({"fetch", "job.toml", "--contact", "me@example.org"}, broken);
  CHECK(fetched.code == could_not);
  CHECK(fetched.err ==
        "slabtide fetch: fetching needs the package libcurl4, which is not there\n"
        "  install it and run it again; typed weather needs none\n");
  CHECK(fetched.out.empty());
  CHECK(job.run(quick_plan, broken).code == 0);
}

TEST_CASE("a reader that goes away early, or was never there") {
  const JobFolder job;
  const Outcome head = job.shell(
      "set -o pipefail; \"$0\" plan job.toml --draws 0 --now 2026-05-13T18:00 | head -n 1");
  CHECK(head.out.ends_with("\n"));
  CHECK(head.err.empty());
  const Outcome closed = job.shell("\"$0\" plan job.toml --draws 0 --now 2026-05-13T18:00 >&-");
  CHECK(closed.code == could_not);
  CHECK(closed.err == "slabtide: the output could not all be written\n");
  const Outcome both = job.shell(
      "\"$0\" plan job.toml --draws 0 --now 2026-05-13T18:00 --write day.json >&- 2>&- <&-");
  CHECK(both.code == could_not);
  // Output must never end up in a file that was opened in place of a closed stream.
  const Outcome whole = job.run(plan_writing("whole.json"));
  CHECK(whole.code == 0);
  CHECK(read_text(job.path() / "day.json") == read_text(job.path() / "whole.json"));
}

TEST_CASE("no home, no terminal and an empty environment change nothing") {
  const JobFolder job;
  const Outcome usual = job.run(quick_plan);
  REQUIRE(usual.code == 0);
  const Outcome bare = job.shell(
      "exec /usr/bin/env -i ${ASAN_OPTIONS+ASAN_OPTIONS=\"$ASAN_OPTIONS\"} \"$0\" plan job.toml "
      "--draws 0 --now 2026-05-13T18:00");
  CHECK(bare.code == 0);
  CHECK(bare.out == usual.out);
  CHECK(job.run(quick_plan, {{"HOME", "/nonexistent"}, {"TERM", "dumb"}}).out == usual.out);
}

TEST_CASE("no locale changes a decimal point or a day's name") {
  // localedef makes the locale even if it is not installed.
  const JobFolder job;
  const Outcome made = job.shell(
      "mkdir locales && localedef -i de_DE -f UTF-8 \"$PWD/locales/de_DE.UTF-8\" 2>&1 || true");
  const bool there = fs::exists(job.path() / "locales/de_DE.UTF-8/LC_NUMERIC");
  if (!there) MESSAGE("no sources of locales here: by name alone");
  // glibc keeps what it reads from LOCPATH until the end, which the leak check would report.
  const Environment german{{"LC_ALL", "de_DE.UTF-8"},
                           {"LANG", "de_DE.UTF-8"},
                           {"LOCPATH", (job.path() / "locales").string()},
                           {"LSAN_OPTIONS", "detect_leaks=0"},
                           {"ASAN_OPTIONS", "detect_leaks=0"}};
  if (there) {
    // Check that this locale has a decimal comma.
    CHECK(job.shell("printf '%.1f' 0,5", german).out == "0,5");
  }
  for (const std::string ending : {"json", "csv", "ics", "html"}) {
    const Outcome usual = job.run(plan_writing("usual." + ending));
    const Outcome elsewhere = job.run(plan_writing("german." + ending), german);
    CHECK(usual.code == 0);
    CHECK(elsewhere.out == usual.out);
    CHECK(elsewhere.err == usual.err);
    CHECK(read_text(job.path() / ("german." + ending)) ==
          read_text(job.path() / ("usual." + ending)));
  }
  CHECK(job.run(quick_plan, {{"LC_ALL", "xx_YY.nonsense"}}).code == 0);
}

}  // namespace slabtide::test
