#include <filesystem>
#include <string>

#include <doctest/doctest.h>

#include "cli/command/planner_files.h"
#include "support/run_program.h"

// `slabtide planner` gives out the page that stands beside the program, and nothing else.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const std::string page_text =
    "<!DOCTYPE html><meta name=\"generator\" content=\"Slabtide\"><title>Slabtide planner</title>";

/// The program in a folder as it is installed, with a planner that is easy to tell.
class Installed {
 public:
  explicit Installed(bool with_planner) {
    fs::create_directories(folder.path() / "bin");
    fs::copy_file(SLABTIDE_PROGRAM, folder.path() / "bin/slabtide");
    if (!with_planner) return;
    fs::create_directories(shared() / "planner");
    write_text(shared() / "planner.html", page_text);
    write_text(shared() / "planner/index.html", page_text + "<!-- hosted -->");
    write_text(shared() / "planner/sw.js", "// Slabtide planner\n");
  }

  fs::path shared() const { return folder.path() / "share/slabtide"; }
  fs::path at(const std::string& name) const { return folder.path() / name; }
  Outcome run(const std::vector<std::string>& words, const std::string& path = "/usr/bin:/bin") {
    std::vector<std::string> all{at("bin/slabtide").string(), "planner"};
    all.insert(all.end(), words.begin(), words.end());
    return run_program(all, folder.path(), {{"PATH", path}});
  }

  TempFolder folder;
};

/// An opener that keeps what it was told to open, and ends with this code.
std::string opener(const Installed& place, int code) {
  fs::create_directories(place.at("tools"));
  write_text(place.at("tools/xdg-open"),
             "#!/bin/sh\nprintf %s \"$1\" > opened\nexit " + std::to_string(code) + "\n");
  fs::permissions(place.at("tools/xdg-open"), fs::perms::owner_all);
  return place.at("tools").string() + ":/usr/bin:/bin";
}

}  // namespace

TEST_CASE("the planner as installed comes before the one built beside the program") {
  const auto places = planner_places("/usr/bin");
  REQUIRE(places.size() == 2);
  CHECK(places[0].page == "/usr/share/slabtide/planner.html");
  CHECK(places[0].site == "/usr/share/slabtide/planner");
  CHECK(planner_places("/src/build/release")[1].page == "/src/build/planner/index.html");
}

TEST_CASE("where the planner is not there it says where it looked and what to do") {
  Installed place(false);
  const Outcome outcome = place.run({"--write", "page.html"});
  CHECK(outcome.code == 1);
  CHECK(outcome.err == "slabtide planner: the planner's page is not here; looked for\n    " +
                           (place.shared() / "planner.html").string() + "\n    " +
                           place.at("planner/index.html").string() +
                           "\n  install the package that has it, or run tools/planner in "
                           "Slabtide's sources\n");
  CHECK_FALSE(fs::exists(place.at("page.html")));
}

TEST_CASE("alone it says where the page is") {
  Installed place(true);
  const Outcome outcome = place.run({});
  CHECK(outcome.code == 0);
  CHECK(outcome.out == "The planner: " + (place.shared() / "planner.html").string() +
                           "\n  slabtide planner --open opens it\n");
}

TEST_CASE("one page is written, and again over its own, but over nothing else") {
  Installed place(true);
  for (int i = 0; i < 2; ++i) {
    const Outcome outcome = place.run({"--write", "my.html"});
    CHECK(outcome.err == "");
    CHECK(outcome.code == 0);
    CHECK(outcome.out == "my.html written: open it in any browser\n");
    CHECK(read_text(place.at("my.html")) == page_text);
  }
  write_text(place.at("letter.html"), "<p>Dear");
  CHECK(place.run({"--write", "letter.html"}).code == 2);
  CHECK(read_text(place.at("letter.html")) == "<p>Dear");
  CHECK(place.run({"--write", "letter.html", "--force"}).code == 0);
  CHECK(read_text(place.at("letter.html")) == page_text);
  CHECK(place.run({"--write", "share/slabtide/planner.html", "--force"}).code == 2);
}

TEST_CASE("a folder for a web host is made, and kept where it holds another's files") {
  Installed place(true);
  for (int i = 0; i < 2; ++i) CHECK(place.run({"--write", "out/site"}).code == 0);
  CHECK(read_text(place.at("out/site/index.html")) == page_text + "<!-- hosted -->");
  CHECK(read_text(place.at("out/site/sw.js")) == "// Slabtide planner\n");
  fs::create_directories(place.at("other"));
  write_text(place.at("other/sw.js"), "// mine\n");
  CHECK(place.run({"--write", "other"}).code == 2);
  CHECK(read_text(place.at("other/sw.js")) == "// mine\n");
  CHECK_FALSE(fs::exists(place.at("other/index.html")));
  write_text(place.at("file"), "x");
  CHECK(place.run({"--write", "file/below"}).code == 1);
}

TEST_CASE("the desktop's browser opens what was written, else the installed page") {
  Installed place(true);
  const std::string path = opener(place, 0);
  CHECK(place.run({"--open"}, path).code == 0);
  CHECK(read_text(place.at("opened")) == (place.shared() / "planner.html").string());
  CHECK(place.run({"--write", "my.html", "--open"}, path).code == 0);
  CHECK(read_text(place.at("opened")) == place.at("my.html").string());
}

TEST_CASE("where no browser opens, the file to open is told") {
  Installed place(true);
  const std::string page = (place.shared() / "planner.html").string();
  const Outcome failed = place.run({"--open"}, opener(place, 3));
  CHECK(failed.code == 1);
  CHECK(failed.err ==
        "slabtide planner: no browser could be opened\n  open this file in any "
        "browser: " +
            page + "\n");
  const Outcome none = place.run({"--open"}, "/nowhere");
  CHECK(none.code == 1);
  CHECK(none.err.starts_with("slabtide planner: there is no xdg-open here"));
}

}  // namespace slabtide::test
