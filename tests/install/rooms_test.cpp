#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <optional>
#include <regex>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "support/run_program.h"

// The house rules that a compiler does not check: who may include whom, one source a header,
// how long a file and a function may grow, and that what is public is explained. DEVELOPERS.md
// says why.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path source_dir = SLABTIDE_SOURCE_DIR;

/// Ground floor first: a room includes itself and those before it.
constexpr std::array<std::string_view, 7> rooms{"core", "job",    "weather", "slab",
                                                "day",  "report", "cli"};

/// Libraries that take long to compile: sources only, so that no other file pays.
constexpr std::array<std::string_view, 4> heavy{"toml++", "nlohmann", "boost/geometry", "curl"};

/// What reads and writes files and streams; the library's only doors.
constexpr std::array<std::string_view, 5> doors{"iostream", "fstream", "cstdio", "stdio.h",
                                                "curl/curl.h"};

constexpr std::ptrdiff_t header_lines = 200;
constexpr std::ptrdiff_t source_lines = 500;
constexpr std::size_t function_lines = 60;

std::optional<std::size_t> room_of(std::string_view name) {
  const auto* const found = std::ranges::find(rooms, name);
  if (found == rooms.end()) return std::nullopt;
  return static_cast<std::size_t>(found - rooms.begin());
}

bool is_header(const fs::path& file) { return file.extension() == ".h"; }

/// What stands between the quotes or brackets of each #include.
std::vector<std::string> includes_of(const std::string& text) {
  static const std::regex directive(R"(^\s*#\s*include\s*[<"]([^>"]+)[>"])");
  std::vector<std::string> result;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    std::smatch match;
    if (std::regex_search(line, match, directive)) result.push_back(match[1]);
  }
  return result;
}

/// The room that an include names: that of "slabtide/weather/sky/sun.h", and of
/// "weather/sky/sun-inl.h" which is not installed, is "weather".
std::string room_named(const std::string& include) {
  constexpr std::string_view project = "slabtide/";
  if (include.starts_with(project)) {
    const std::string rest = include.substr(project.size());
    return rest.substr(0, rest.find('/'));
  }
  const std::string first = include.substr(0, include.find('/'));
  return first.size() < include.size() && room_of(first) ? first : std::string();
}

/// Why the file of `room` may not include this; empty where it may.
std::string include_fault(const std::string& room, const fs::path& file,
                          const std::string& include) {
  if (const std::string other = room_named(include); !other.empty()) {
    const auto there = room_of(other);
    if (!there) return "names no room";
    if (*there > *room_of(room)) return other + " comes after " + room;
  }
  const auto begins_with = [&](std::string_view name) { return include.starts_with(name); };
  if (is_header(file) && std::ranges::any_of(heavy, begins_with)) return "too heavy for a header";
  const bool has_door = room == "cli" || file.filename() == "files.cpp";
  const auto is = [&](std::string_view name) { return include == name; };
  if (!has_door && std::ranges::any_of(doors, is)) return "input and output belong to cli";
  return {};
}

/// Of a block that ends in a line of a brace alone, as a function does: the lines from the last
/// one before it that is no deeper. 0 where the line ends none.
std::size_t block_lines(const std::vector<std::string>& lines, std::size_t last) {
  const std::size_t indent = lines[last].find_first_not_of(' ');
  if (indent == std::string::npos || lines[last].substr(indent) != "}") return 0;
  for (std::size_t first = last; first-- > 0;) {
    const std::size_t depth = lines[first].find_first_not_of(' ');
    if (depth <= indent) return last - first + 1;
  }
  return 0;
}

std::vector<std::string> long_functions(const fs::path& file, const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  std::vector<std::string> result;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (const std::size_t count = block_lines(lines, i); count > function_lines) {
      result.push_back(file.string() + ":" + std::to_string(i + 1) + " ends a function of " +
                       std::to_string(count) + " lines");
    }
  }
  return result;
}

/// Of a paragraph's first line: what is declared there has to say what it is, in a comment above
/// or behind. Paragraphs within a body are indented.
bool needs_words(const std::string& line) {
  static const std::regex forward(R"((struct|class|enum class) \w+;)");
  const auto begins = [&](std::string_view with) { return line.starts_with(with); };
  return !begins(" ") && !begins("//") && !begins("#") && !begins("}") && !begins("namespace") &&
         line.find("///<") == std::string::npos && !std::regex_match(line, forward);
}

std::vector<std::string> wordless(const fs::path& file, const std::string& text) {
  std::vector<std::string> result;
  std::istringstream in(text);
  bool was_blank = true;
  for (std::string line; std::getline(in, line); was_blank = line.empty()) {
    if (was_blank && !line.empty() && needs_words(line)) {
      result.push_back(file.string() + ": no word on " + line);
    }
  }
  return result;
}

std::vector<std::string> faults_of(const std::string& room, const fs::path& file,
                                   const std::string& text) {
  std::vector<std::string> result = long_functions(file, text);
  for (const std::string& include : includes_of(text)) {
    const std::string fault = include_fault(room, file, include);
    if (!fault.empty()) result.push_back(file.string() + " includes " + include + ": " + fault);
  }
  const auto lines = std::ranges::count(text, '\n');
  if (lines > (is_header(file) ? header_lines : source_lines)) {
    result.push_back(file.string() + " has " + std::to_string(lines) + " lines");
  }
  return result;
}

/// The files of a room, both halves, relative to the project.
std::vector<fs::path> files_of(std::string_view room) {
  std::vector<fs::path> result;
  for (const fs::path half : {"include/slabtide", "src"}) {
    if (!fs::exists(source_dir / half / room)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(source_dir / half / room)) {
      const auto ending = entry.path().extension();
      if (ending == ".h" || ending == ".cpp") {
        result.push_back(fs::relative(entry.path(), source_dir));
      }
    }
  }
  std::ranges::sort(result);
  return result;
}

bool has_header(const fs::path& source) {
  const fs::path beside = fs::path(source).replace_extension(".h");
  const fs::path shown = fs::path("include/slabtide") / fs::relative(beside, "src");
  return fs::exists(source_dir / beside) || fs::exists(source_dir / shown);
}

}  // namespace

TEST_CASE("a room includes only itself and the rooms before it") {
  for (const std::string_view room : rooms) {
    const auto files = files_of(room);
    if (room == "core" || room == "cli") REQUIRE(!files.empty());
    for (const fs::path& file : files) {
      for (const std::string& fault :
           faults_of(std::string(room), file, read_text(source_dir / file))) {
        FAIL_CHECK(fault);
      }
    }
  }
}

TEST_CASE("what a public header declares, it explains") {
  for (const std::string_view room : rooms) {
    for (const fs::path& file : files_of(room)) {
      if (!file.string().starts_with("include")) continue;
      for (const std::string& fault : wordless(file, read_text(source_dir / file))) {
        FAIL_CHECK(fault);
      }
    }
  }
  const std::string head = "#pragma once\n\nnamespace a {\n\n";
  CHECK(wordless("x.h", head + "/// Two.\nint f();\nint g();\n\n}\n").empty());
  CHECK(wordless("x.h", head + "struct X;\n\ninline constexpr int a = 1;  ///< one\n").empty());
  CHECK(wordless("x.h", head + "int f();\n\n}  // namespace a\n").size() == 1);
  CHECK(wordless("x.h", head + "struct X {\n  int a;\n\n  int b;\n};\n").size() == 1);
}

TEST_CASE("every source has a header of its name") {
  for (const std::string_view room : rooms) {
    for (const fs::path& file : files_of(room)) {
      if (file.extension() == ".cpp") CHECK_MESSAGE(has_header(file), file.string());
    }
  }
  CHECK_FALSE(has_header("src/core/no_such_thing.cpp"));
}

TEST_CASE("the project has only the rooms it says") {
  for (const fs::path half : {"include/slabtide", "src"}) {
    for (const auto& entry : fs::directory_iterator(source_dir / half)) {
      if (entry.is_directory()) CHECK_MESSAGE(room_of(entry.path().filename().string()), entry);
    }
  }
}

TEST_CASE("a broken rule is seen") {
  const auto count = [](const char* room, const char* file, const std::string& text) {
    return faults_of(room, file, text).size();
  };
  CHECK(count("weather", "x.cpp", "#include \"slabtide/job/model/job.h\"\n") == 0);
  CHECK(count("weather", "x.cpp", "#include \"slabtide/slab/column/column.h\"\n") == 1);
  CHECK(count("core", "x.h", "#  include <slabtide/job/model/job.h>\n") == 1);
  CHECK(count("weather", "x-inl.h", "#include \"slab/numbers-inl.h\"\n") == 1);
  CHECK(count("slab", "x.cpp", "#include \"weather/air/moist_air-inl.h\"\n") == 0);
  CHECK(count("cli", "x.cpp", "#include \"slabtide/clock/x.h\"\n") == 1);
  CHECK(count("job", "x.h", "#include <toml++/toml.h>\n") == 1);
  CHECK(count("job", "x.cpp", "#include <toml++/toml.h>\n") == 0);
  CHECK(count("slab", "x.cpp", "#include <fstream>\n") == 1);
  CHECK(count("cli", "x.cpp", "#include <iostream>\n") == 0);
  CHECK(count("job", "x.h", std::string(201, '\n')) == 1);
  CHECK(count("job", "x.cpp", std::string(501, '\n')) == 1);
  const auto function_of = [](int statements) {
    std::string text = "namespace a {\n\nint long_one(int x,\n             int y) {\n";
    for (int i = 0; i < statements; ++i) text += "  ++x;\n\n";
    return text + "}\n\n}  // namespace a\n";
  };
  CHECK(count("job", "x.cpp", function_of(28)) == 0);
  CHECK(count("job", "x.cpp", function_of(29)) == 1);
}

}  // namespace slabtide::test
