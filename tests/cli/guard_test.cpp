#include <sys/stat.h>

#include <filesystem>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "support/run_program.h"

// What a run must never overwrite: what it reads (by whatever path), what it has already written,
// and what slabtide did not write.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

constexpr int input_wrong = 2;

/// The spring demo as job.toml, planned with a forecast table typed by hand.
class GuardedFolder {
 public:
  GuardedFolder() {
    std::string job = read_text(fs::path(SLABTIDE_SOURCE_DIR) / "data/demo/spring.toml");
    const std::size_t begin = job.find("[weather]");
    const std::size_t end = job.find("\n[", begin + 1);
    job.replace(begin, end - begin, "[weather]\nforecast = \"typed.csv\"\n");
    put("job.toml", job);
    std::string table = "time,air_f,dew_point_f,wind_mph,cloud_percent\n";
    for (int hour = 0; hour < 72; ++hour) {
      table += fmt::format("2026-05-{:02}T{:02}:00,60,45,7,20\n", 13 + hour / 24, hour % 24);
    }
    put("typed.csv", table);
  }

  fs::path path(const std::string& name) const { return folder_.path() / name; }
  std::string text(const std::string& name) const { return read_text(path(name)); }
  void put(const std::string& name, const std::string& text) const { write_text(path(name), text); }

  Outcome run(std::vector<std::string> words) const {
    words.insert(words.begin(), SLABTIDE_PROGRAM);
    return run_program(words, folder_.path());
  }
  Outcome plan(std::vector<std::string> more, const std::string& job = "job.toml") const {
    std::vector<std::string> words{"plan", job, "--draws", "0", "--now", "2026-05-13T18:00"};
    words.insert(words.end(), more.begin(), more.end());
    return run(words);
  }

 private:
  TempFolder folder_;
};

/// Refused even with --force, and the file is unchanged.
void check_refused(const GuardedFolder& folder, const std::string& kept,
                   const std::vector<std::string>& options, const std::string& message,
                   const std::string& job = "job.toml") {
  INFO(message);
  const std::string before = folder.text(kept);
  REQUIRE(!before.empty());
  const Outcome refused = folder.plan(options, job);
  CHECK(refused.code == input_wrong);
  CHECK(refused.out.empty());
  CHECK(refused.err == message);
  std::vector<std::string> forced = options;
  forced.emplace_back("--force");
  CHECK(folder.plan(forced, job).code == input_wrong);
  CHECK(folder.text(kept) == before);
}

const std::string another_name = "  Give the written file another name\n";

}  // namespace

TEST_CASE("the forecast that the job names is not written over") {
  const GuardedFolder folder;
  REQUIRE(folder.plan({}).code == 0);
  check_refused(folder, "typed.csv", {"--write", "typed.csv"},
                "slabtide plan: cannot write \"typed.csv\": it is the forecast of job.toml, which "
                "this run reads\n" +
                    another_name);
  fs::create_directory(folder.path("sub"));
  check_refused(folder, "typed.csv", {"--write", "sub/../typed.csv"},
                "slabtide plan: cannot write \"sub/../typed.csv\": it is the forecast of job.toml, "
                "\"typed.csv\", which this run reads\n" +
                    another_name);
  fs::create_hard_link(folder.path("typed.csv"), folder.path("hard.csv"));
  check_refused(folder, "typed.csv", {"--write", "hard.csv"},
                "slabtide plan: cannot write \"hard.csv\": it is the forecast of job.toml, "
                "\"typed.csv\", which this run reads\n" +
                    another_name);
  // An ending alone means a file beside the job.
  fs::copy_file(folder.path("job.toml"), folder.path("typed.toml"));
  check_refused(
      folder, "typed.csv", {"--write", ".csv"},
      "slabtide plan: cannot write \"typed.csv\": it is the forecast of typed.toml, which "
      "this run reads\n" +
          another_name,
      "typed.toml");
}

TEST_CASE("nor are the job, by a link to it, the practice, the forecast given, another's job") {
  const GuardedFolder folder;
  fs::create_symlink("job.toml", folder.path("x.html"));
  check_refused(
      folder, "job.toml", {"--write", "x.html"},
      "slabtide plan: cannot write \"x.html\": it is the job, \"job.toml\", which this run "
      "reads\n" +
          another_name);
  folder.put("own.json", "[operation.stamp]\nopens_psi = 35\n");
  check_refused(folder, "own.json", {"--practice", "own.json", "--write", "own.json"},
                "slabtide plan: cannot write \"own.json\": it is the practice file, which this run "
                "reads\n" +
                    another_name);
  fs::copy_file(folder.path("typed.csv"), folder.path("given.csv"));
  check_refused(folder, "given.csv", {"--forecast", "given.csv", "--write", "given.csv"},
                "slabtide plan: cannot write \"given.csv\": it is the forecast, which this run "
                "reads\n" +
                    another_name);
  fs::copy_file(folder.path("job.toml"), folder.path("job.csv"));
  check_refused(folder, "job.csv", {"--write", ".csv"},
                "slabtide plan: cannot write \"job.csv\": it is the job, which this run reads\n" +
                    another_name,
                "job.csv");
  fs::copy_file(folder.path("typed.csv"), folder.path("job.csv"),
                fs::copy_options::overwrite_existing);
  std::string second = folder.text("job.toml");
  second.replace(second.find("typed.csv"), 9, "job.csv");
  folder.put("b.toml", second);
  check_refused(folder, "job.csv", {"b.toml", "--write", ".csv"},
                "slabtide plan: cannot write \"job.csv\": it is the forecast of b.toml, which this "
                "run reads\n" +
                    another_name);
}

TEST_CASE("one run writes no file twice") {
  const GuardedFolder folder;
  fs::create_directory(folder.path("sub"));
  fs::create_symlink("day.html", folder.path("link.html"));
  for (const std::string other : {"day.html", "sub/../day.html", "link.html"}) {
    const Outcome refused = folder.plan({"--write", "day.html", "--write", other});
    CHECK(refused.code == input_wrong);
    CHECK(refused.err == fmt::format("slabtide plan: cannot write \"{}\": this run already writes "
                                     "it, as \"day.html\"\n"
                                     "  Give each written file a name of its own\n",
                                     other));
    CHECK(!fs::exists(folder.path("day.html")));
  }
  // A link to a file that does not exist yet is followed.
  CHECK(folder.plan({"--write", "link.html"}).code == 0);
  CHECK(fs::is_symlink(folder.path("link.html")));
  CHECK(folder.text("day.html").starts_with("<!DOCTYPE html>"));
}

TEST_CASE("what slabtide did not write stays, unless forced") {
  const GuardedFolder folder;
  struct Foreign {
    std::string name;
    std::string text;
    std::string told;
  };
  const std::vector<Foreign> cases{
      {"day.ics", "BEGIN:VCALENDAR\r\nPRODID:-//Else//Else//EN\r\nBEGIN:VEVENT\r\n",
       "what is there is a calendar of another program, expected a calendar that slabtide wrote"},
      {"day.html", "<!DOCTYPE html>\n<title>Ours</title>\n",
       "what is there is a file that begins \"<!DOCTYPE html> ...\", expected a page that slabtide "
       "wrote"},
      {"day.json", "{\"jobs\": 12}",
       "what is there is a file that begins \"{\"jobs\": 12}\", expected a JSON file of plans that "
       "slabtide wrote"},
      {"day.csv", "name,hours\nA,8\n",
       "what is there is a file that begins \"name,hours ...\", expected a table that slabtide "
       "wrote"}};
  for (const Foreign& foreign : cases) {
    CAPTURE(foreign.name);
    folder.put(foreign.name, foreign.text);
    const Outcome refused = folder.plan({"--write", foreign.name});
    CHECK(refused.code == input_wrong);
    CHECK(refused.err == fmt::format("slabtide plan: cannot write \"{}\": {}\n"
                                     "  Give another name; --force writes over it anyway\n",
                                     foreign.name, foreign.told));
    CHECK(folder.text(foreign.name) == foreign.text);
    CHECK(folder.plan({"--write", foreign.name, "--force"}).code == 0);
    CHECK(folder.text(foreign.name) != foreign.text);
    CHECK(folder.plan({"--write", foreign.name}).code == 0);  // now our own file
    folder.put(foreign.name, "");
    CHECK(folder.plan({"--write", foreign.name}).code == 0);
  }
}

TEST_CASE("what a command wrote it writes again") {
  const GuardedFolder folder;
  const std::vector<std::string> days{"days",    "job.toml",         "--draws", "0",
                                      "--now",   "2026-05-13T18:00", "--write", "w.html",
                                      "--write", "w.json",           "--write", "w.csv"};
  CHECK(folder.run(days).code == 0);
  const std::string table = folder.text("w.csv");
  const Outcome again = folder.run(days);
  CHECK(again.code == 0);
  CHECK(again.err.find("cannot write") == std::string::npos);
  CHECK(folder.text("w.csv") == table);
  const std::vector<std::string> compare{
      "compare",          "job.toml", "--draws", "0",       "--now",
      "2026-05-13T18:00", "--write",  "c.html",  "--write", "c.json"};
  CHECK(folder.run(compare).code == 0);
  CHECK(folder.run(compare).code == 0);
}

TEST_CASE("fetch keeps its forecast from what is none") {
  const GuardedFolder folder;
  const std::vector<std::string> fetch{"fetch", "job.toml", "--base-url", "http://127.0.0.1:9",
                                       "--to"};
  struct Case {
    std::string name;
    std::string text;
    std::string told;
  };
  const std::vector<Case> cases{
      {"notes.journal", "2026-05-14 11:05  thumbprint  landing\n",
       "what is there is a journal of readings, expected a forecast fetched that slabtide wrote"},
      {"book.toml", "[[mix]]\nname = \"six sack\"\n",
       "what is there is a mix book, expected a forecast fetched that slabtide wrote"},
      {"other.csv", folder.text("typed.csv"),
       "what is there is a forecast table typed by hand, expected a forecast fetched that slabtide "
       "wrote"},
      {"other.toml", folder.text("job.toml"),
       "what is there is a job file, expected a forecast fetched that slabtide wrote"},
      {"job.toml", folder.text("job.toml"), "it is the job, which this run reads"}};
  for (const Case& each : cases) {
    CAPTURE(each.name);
    folder.put(each.name, each.text);
    std::vector<std::string> words = fetch;
    words.push_back(each.name);
    const Outcome refused = folder.run(words);
    CHECK(refused.code == input_wrong);
    CHECK(refused.err.starts_with(
        fmt::format("slabtide fetch: cannot write \"{}\": {}\n", each.name, each.told)));
    CHECK(folder.text(each.name) == each.text);
  }
}

TEST_CASE("a starting job, a journal and a mix book keep to what is theirs") {
  const GuardedFolder folder;
  const std::string job = folder.text("job.toml");
  CHECK(folder.run({"starter", "--write", "job.toml"}).code == input_wrong);
  CHECK(folder.text("job.toml") == job);
  folder.put("job.journal", "; the firm's accounts\n2026/01/02 rent  1200\n");
  const std::vector<std::string> note{"note",   "job.toml", "--at",      "12:05",
                                      "--zone", "landing",  "print-firm"};
  const Outcome refused = folder.run(note);
  CHECK(refused.code == input_wrong);
  CHECK(refused.err ==
        "slabtide note: cannot write \"job.journal\": what is there is a file that begins \"; the "
        "firm's accounts ...\", expected a journal of readings that slabtide wrote\n"
        "  Give another name; --force writes over it anyway\n");
  // A job that would be its own journal.
  folder.put("pad.journal", job);
  std::vector<std::string> own = note;
  own[1] = "pad.journal";
  CHECK(folder.run(own).code == input_wrong);
  CHECK(folder.text("pad.journal") == job);
  CHECK(folder.run({"starter", "--write", "job.toml", "--force"}).code == 0);
  CHECK(folder.text("job.toml") != job);
}

TEST_CASE("a folder, and a pipe that nobody reads from, are refused at once") {
  const GuardedFolder folder;
  fs::create_directory(folder.path("day.html"));
  CHECK(folder.plan({"--write", "day.html"}).err ==
        "day.html: cannot write \"day.html\": it is a folder\n  Name a file in it\n");
  REQUIRE(::mkfifo(folder.path("day.json").c_str(), 0600) == 0);
  const Outcome piped = folder.plan({"--write", "day.json"});
  CHECK(piped.code == 1);
  CHECK(
      piped.err ==
      "day.json: cannot write \"day.json\": it is a pipe that nobody reads from, or a device that "
      "is away\n  Start the reader first, or name a file\n");
  // Reading from it does not hang either.
  CHECK(folder.plan({}, "day.json").code == input_wrong);
  CHECK(folder.plan({"--forecast", "day.json"}).code == input_wrong);
}

}  // namespace slabtide::test
