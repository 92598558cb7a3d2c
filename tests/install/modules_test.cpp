#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "support/run_program.h"

// Rules of the architecture that no compiler checks: which modules may include which, one source
// per header, how long a file and a function may be, and that public declarations are documented.
// DEVELOPERS.md gives the reasons.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

const fs::path source_dir = SLABTIDE_SOURCE_DIR;

/// A folder of the library: a module, or a sub-module of one.
struct Place {
  std::string module;
  std::string sub_module;  ///< empty for files in the module's own folder
};

/// The folders added with add_subdirectory, in order. CMake's lists define the order in which
/// modules, and the sub-modules of a module, may include each other.
std::vector<std::string> folders_added_in(const fs::path& folder) {
  static const std::regex directive(R"(add_subdirectory\((\w+)\))");
  std::vector<std::string> result;
  const std::string text = read_text(source_dir / folder / "CMakeLists.txt");
  for (std::sregex_iterator it(text.begin(), text.end(), directive), end; it != end; ++it) {
    result.push_back((*it)[1]);
  }
  return result;
}

const std::vector<std::string>& modules() {
  static const std::vector<std::string> names = folders_added_in("src");
  return names;
}

const std::vector<std::string>& sub_modules_of(const std::string& module) {
  static std::map<std::string, std::vector<std::string>> known;
  const auto found = known.find(module);
  if (found != known.end()) return found->second;
  return known[module] = folders_added_in(fs::path("src") / module);
}

/// Libraries that take long to compile: only for sources, so that other files are not slowed down.
constexpr std::array<std::string_view, 4> heavy{"toml++", "nlohmann/json.hpp", "boost/geometry",
                                                "curl"};

/// Headers for files and streams, which only a few places may use.
constexpr std::array<std::string_view, 5> doors{"iostream", "fstream", "cstdio", "stdio.h",
                                                "curl/curl.h"};

constexpr std::ptrdiff_t header_lines = 200;
constexpr std::ptrdiff_t source_lines = 500;
constexpr std::size_t function_lines = 60;

/// How many names come before it; empty if it is not one of them.
std::optional<std::size_t> rank_of(const std::vector<std::string>& names, const std::string& name) {
  const auto found = std::ranges::find(names, name);
  if (found == names.end()) return std::nullopt;
  return static_cast<std::size_t>(found - names.begin());
}

bool is_header(const fs::path& file) { return file.extension() == ".h"; }

/// The text between the quotes or brackets of each #include.
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

std::vector<std::string> split_path(const std::string& path) {
  std::vector<std::string> parts;
  for (const fs::path& part : fs::path(path)) parts.push_back(part.string());
  return parts;
}

/// The place of an included file: "slabtide/weather/sky/sun.h" and "weather/sky/sun-inl.h", which
/// is not installed, are in weather's sub-module sky. Empty for files that are not the project's.
std::optional<Place> place_named(const std::string& include) {
  std::vector<std::string> parts = split_path(include);
  const bool is_public = parts.front() == "slabtide";
  if (is_public) parts.erase(parts.begin());
  if (parts.size() < 2 || (!is_public && !rank_of(modules(), parts.front()))) return std::nullopt;
  return Place{parts[0], parts.size() > 2 ? parts[1] : ""};
}

/// Why `from` may not include a file in `to`; empty if it may.
std::string order_fault(const Place& from, const Place& to) {
  const auto there = rank_of(modules(), to.module);
  if (!there) return "names no module";
  if (*there > *rank_of(modules(), from.module)) return to.module + " comes after " + from.module;
  if (to.module != from.module) return {};
  const auto& subs = sub_modules_of(from.module);
  const auto here = rank_of(subs, from.sub_module);
  const auto beside = rank_of(subs, to.sub_module);
  if (here && beside && *beside > *here) return to.sub_module + " comes after " + from.sub_module;
  return {};
}

/// Why a file of `place` may not include this; empty if it may.
std::string include_fault(const Place& place, const fs::path& file, const std::string& include) {
  if (const auto there = place_named(include)) {
    if (std::string fault = order_fault(place, *there); !fault.empty()) return fault;
  }
  const auto begins_with = [&](std::string_view name) { return include.starts_with(name); };
  if (is_header(file) && std::ranges::any_of(heavy, begins_with)) return "too heavy for a header";
  // curl parses addresses and dates for the download, which itself sends nothing.
  const bool has_door = place.module == "cli" || file.filename() == "files.cpp" ||
                        (place.sub_module == "download" && include == "curl/curl.h");
  const auto is = [&](std::string_view name) { return include == name; };
  if (!has_door && std::ranges::any_of(doors, is)) return "input and output belong to cli";
  return {};
}

/// For a line that ends a block, such as a function, with a single brace: the number of lines since
/// the last earlier line that is not indented more deeply. 0 if the line does not end a block.
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

/// Whether the first line of a paragraph declares something that needs a comment, above or behind
/// it. Paragraphs within a body are indented.
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

std::vector<std::string> faults_of(const Place& place, const fs::path& file,
                                   const std::string& text) {
  std::vector<std::string> result = long_functions(file, text);
  for (const std::string& include : includes_of(text)) {
    const std::string fault = include_fault(place, file, include);
    if (!fault.empty()) result.push_back(file.string() + " includes " + include + ": " + fault);
  }
  const auto lines = std::ranges::count(text, '\n');
  if (lines > (is_header(file) ? header_lines : source_lines)) {
    result.push_back(file.string() + " has " + std::to_string(lines) + " lines");
  }
  return result;
}

/// The files of a module, public and private, relative to the project.
std::vector<fs::path> files_of(const std::string& module) {
  std::vector<fs::path> result;
  for (const fs::path half : {"include/slabtide", "src"}) {
    if (!fs::exists(source_dir / half / module)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(source_dir / half / module)) {
      const auto ending = entry.path().extension();
      if (ending == ".h" || ending == ".cpp") {
        result.push_back(fs::relative(entry.path(), source_dir));
      }
    }
  }
  std::ranges::sort(result);
  return result;
}

/// The place of a file: "src/day/pour/order.cpp" is in day's sub-module pour.
Place place_of(const fs::path& file) {
  std::vector<std::string> parts = split_path(file.string());
  parts.erase(parts.begin(), parts.begin() + (parts.front() == "include" ? 2 : 1));
  return {parts[0], parts.size() > 2 ? parts[1] : ""};
}

/// "day/pour/order" for a header, its source, and an include of it. "order.h" is beside `from`.
std::string stem_of(const std::string& path, const std::string& from) {
  std::string stem = path.starts_with("slabtide/") ? path.substr(9) : path;
  if (stem.find('/') == std::string::npos) stem = (fs::path(from).parent_path() / stem).string();
  stem = fs::path(stem).replace_extension().string();
  constexpr std::string_view of_lanes = "-inl";  // a formula's header belongs to its source
  return stem.ends_with(of_lanes) ? stem.substr(0, stem.size() - of_lanes.size()) : stem;
}

/// For each stem, the stems that its header and source include.
using Includes = std::map<std::string, std::set<std::string>>;

void add_includes(Includes& includes, const std::string& file, const std::string& text) {
  const std::string stem = stem_of(file, file);
  for (const std::string& include : includes_of(text)) {
    if (!include.ends_with(".h")) continue;  // a standard header
    if (std::string other = stem_of(include, file); other != stem) includes[stem].insert(other);
  }
}

/// The stems that include themselves through others.
std::vector<std::string> in_circles(const Includes& includes) {
  std::vector<std::string> result;
  for (const auto& [stem, direct] : includes) {
    std::set<std::string> reached;
    std::vector<std::string> ahead(direct.begin(), direct.end());
    while (!ahead.empty()) {
      const std::string next = std::move(ahead.back());
      ahead.pop_back();
      const auto found = includes.find(next);
      if (!reached.insert(next).second || found == includes.end()) continue;
      ahead.insert(ahead.end(), found->second.begin(), found->second.end());
    }
    if (reached.contains(stem)) result.push_back(stem);
  }
  return result;
}

bool has_header(const fs::path& source) {
  const fs::path beside = fs::path(source).replace_extension(".h");
  const fs::path shown = fs::path("include/slabtide") / fs::relative(beside, "src");
  return fs::exists(source_dir / beside) || fs::exists(source_dir / shown);
}

}  // namespace

TEST_CASE("a module includes only itself and those before it, and so does a sub-module") {
  REQUIRE(modules().front() == "core");
  REQUIRE(modules().back() == "cli");
  REQUIRE(!sub_modules_of("day").empty());
  for (const std::string& module : modules()) {
    const auto files = files_of(module);
    REQUIRE(!files.empty());
    for (const fs::path& file : files) {
      for (const std::string& fault :
           faults_of(place_of(file), file, read_text(source_dir / file))) {
        FAIL_CHECK(fault);
      }
    }
  }
}

TEST_CASE("files do not include each other in a circle, header and source taken together") {
  Includes includes;
  for (const std::string& module : modules()) {
    for (const fs::path& file : files_of(module)) {
      const bool is_public = file.string().starts_with("include");
      add_includes(includes, fs::relative(file, is_public ? "include/slabtide" : "src").string(),
                   read_text(source_dir / file));
    }
  }
  for (const std::string& stem : in_circles(includes)) {
    FAIL_CHECK(stem << " includes itself by way of others");
  }
  Includes circle;
  add_includes(circle, "day/pour/a.h", "#include \"slabtide/day/pour/b.h\"\n");
  add_includes(circle, "day/pour/b.h", "#include \"c-inl.h\"\n#include <vector>\n");
  CHECK(in_circles(circle).empty());
  add_includes(circle, "day/pour/c.cpp", "#include \"a.h\"\n");
  CHECK(in_circles(circle).size() == 3);
}

TEST_CASE("what a public header declares, it explains") {
  for (const std::string& module : modules()) {
    for (const fs::path& file : files_of(module)) {
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
  for (const std::string& module : modules()) {
    for (const fs::path& file : files_of(module)) {
      if (file.extension() == ".cpp") CHECK_MESSAGE(has_header(file), file.string());
    }
  }
  CHECK_FALSE(has_header("src/core/no_such_thing.cpp"));
}

TEST_CASE("the project has only the modules and sub-modules it says") {
  for (const fs::path half : {"include/slabtide", "src"}) {
    for (const auto& entry : fs::directory_iterator(source_dir / half)) {
      if (!entry.is_directory()) continue;
      const std::string module = entry.path().filename().string();
      CHECK_MESSAGE(rank_of(modules(), module), module);
      for (const auto& inner : fs::directory_iterator(entry)) {
        if (!inner.is_directory()) continue;
        CHECK_MESSAGE(rank_of(sub_modules_of(module), inner.path().filename().string()), inner);
      }
    }
  }
}

TEST_CASE("a folder fits on a screen") {
  constexpr int max_files = 44;
  std::map<std::string, int> counts;
  for (const std::string& module : modules()) {
    for (const fs::path& file : files_of(module)) ++counts[file.parent_path().string()];
  }
  for (const auto& folder : counts) CHECK_MESSAGE(folder.second <= max_files, folder.first);
}

TEST_CASE("a broken rule is seen") {
  const auto count = [](const Place& place, const char* file, const std::string& text) {
    return faults_of(place, file, text).size();
  };
  const Place weather{"weather", "sky"};
  CHECK(count(weather, "x.cpp", "#include \"slabtide/job/model/job.h\"\n") == 0);
  CHECK(count(weather, "x.cpp", "#include \"slabtide/slab/column/column.h\"\n") == 1);
  CHECK(count(weather, "x-inl.h", "#include \"slab/column/numbers-inl.h\"\n") == 1);
  CHECK(count(weather, "x.cpp", "#include \"slabtide/weather/air/moist_air.h\"\n") == 0);
  CHECK(count(weather, "x.cpp", "#include \"slabtide/weather/site/exposure.h\"\n") == 1);
  CHECK(count(weather, "x.cpp", "#include \"weather/site/exposure.h\"\n") == 1);
  CHECK(count({"core", ""}, "x.h", "#  include <slabtide/job/model/job.h>\n") == 1);
  CHECK(count({"slab", "mix"}, "x.cpp", "#include \"weather/air/moist_air-inl.h\"\n") == 0);
  CHECK(count({"cli", "command"}, "x.cpp", "#include \"slabtide/clock/x.h\"\n") == 1);
  const Place job{"job", "toml"};
  CHECK(count(job, "x.h", "#include <toml++/toml.h>\n") == 1);
  CHECK(count(job, "x.cpp", "#include <toml++/toml.h>\n") == 0);
  CHECK(count({"slab", "mix"}, "x.cpp", "#include <fstream>\n") == 1);
  CHECK(count({"cli", "command"}, "x.cpp", "#include <iostream>\n") == 0);
  CHECK(count(job, "x.h", std::string(201, '\n')) == 1);
  CHECK(count(job, "x.cpp", std::string(501, '\n')) == 1);
  const auto function_of = [](int statements) {
    std::string text = "namespace a {\n\nint long_one(int x,\n             int y) {\n";
    for (int i = 0; i < statements; ++i) text += "  ++x;\n\n";
    return text + "}\n\n}  // namespace a\n";
  };
  CHECK(count(job, "x.cpp", function_of(28)) == 0);
  CHECK(count(job, "x.cpp", function_of(29)) == 1);
}

}  // namespace slabtide::test
