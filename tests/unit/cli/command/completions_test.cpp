#include <doctest/doctest.h>

#include "cli/command/commands.h"
#include "cli/command/completions.h"
#include "support/run_program.h"

namespace slabtide {

namespace {

std::vector<CommandLine> all_lines() {
  std::vector<CommandLine> lines;
  for (const Command& command : commands()) lines.push_back(command.line());
  return lines;
}

/// Commands whose words need every kind of quoting.
std::vector<CommandLine> odd_lines() {
  CommandLine line;
  line.name = "odd";
  line.summary = "it's [odd]: a 'word' \\ more";
  line.operand = "JOB";
  line.options = {{"way", "us|si", "that's [one]: of 'two' \\ ways", true},
                  {"to", "FILE", "a file", false},
                  {"on", "", "a switch", false}};
  return {line};
}

/// The completions that bash offers for these words, the last of which is being typed, one per
/// line.
std::string bash_offers(const std::string& script, const std::string& words, int at) {
  const test::TempFolder folder;
  test::write_text(folder.path() / "slabtide", script);
  test::write_text(folder.path() / "porch.toml", "");
  test::write_text(folder.path() / "porch.txt", "");
  const std::string ask = ". ./slabtide; COMP_WORDS=(" + words +
                          "); COMP_CWORD=" + std::to_string(at) +
                          "; _slabtide; printf '%s\\n' \"${COMPREPLY[@]}\"";
  const auto told = test::run_program({"bash", "-c", ask}, folder.path());
  CHECK(told.err == "");
  return told.out;
}

}  // namespace

TEST_CASE("bash offers commands, a command's options, choices, files and job files") {
  const std::string script = bash_completions(all_lines());
  CHECK(bash_offers(script, "slabtide com", 1) == "compare\n");
  CHECK(bash_offers(script, "slabtide plan --un", 2) == "--units\n");
  CHECK(bash_offers(script, "slabtide plan --units ''", 3) == "us\nsi\n");
  CHECK(bash_offers(script, "slabtide plan po", 2) == "porch.toml\n");
  CHECK(bash_offers(script, "slabtide plan porch.toml --write porch.tx", 4) == "porch.txt\n");
  CHECK(bash_offers(script, "slabtide fetch porch.toml --from n", 4) == "nws\n");
  CHECK(bash_offers(script, "slabtide plan --now x", 3) == "\n");
}

TEST_CASE("zsh and fish can read what is written for them") {
  for (const auto& lines : {all_lines(), odd_lines()}) {
    const test::TempFolder folder;
    test::write_text(folder.path() / "_slabtide", zsh_completions(lines));
    test::write_text(folder.path() / "slabtide.fish", fish_completions(lines));
    const auto zsh = test::run_program({"zsh", "-n", "_slabtide"}, folder.path());
    CHECK(zsh.code == 0);
    CHECK(zsh.err == "");
    const auto fish = test::run_program({"fish", "--no-execute", "slabtide.fish"}, folder.path());
    CHECK(fish.code == 0);
    CHECK(fish.err == "");
  }
}

TEST_CASE("fish offers what is written for it") {
  const test::TempFolder folder;
  test::write_text(folder.path() / "slabtide.fish", fish_completions(all_lines()));
  const auto told = test::run_program(
      {"fish", "--no-config", "-c", "source slabtide.fish; complete -C 'slabtide plan --units '"},
      folder.path());
  CHECK(told.out ==
        "si\tunits of the output; else the job file's\n"
        "us\tunits of the output; else the job file's\n");
  CHECK(told.err == "");
}

TEST_CASE("marks of the shells in a help text stay text") {
  const std::string zsh = zsh_completions(odd_lines());
  CHECK(zsh.find("'odd:it'\\''s \\[odd\\]\\: a '\\''word'\\'' \\\\ more'") != std::string::npos);
  CHECK(zsh.find("'*--way[that'\\''s \\[one\\]\\: of '\\''two'\\'' \\\\ ways]:us|si:(us si)'") !=
        std::string::npos);
  const std::string fish = fish_completions(odd_lines());
  CHECK(fish.find("-d 'it\\'s [odd]: a \\'word\\' \\\\ more'") != std::string::npos);
}

}  // namespace slabtide
