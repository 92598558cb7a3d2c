#include "toml_fault.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace slabtide {

namespace {

/// What the parser's description holds, and what is said in its place.
struct FaultWords {
  std::string_view part;
  std::string_view message;
  std::string_view next_step;
};

/// The first that fits counts. The parts are toml++ 3.2's.
constexpr auto fault_words = std::to_array<FaultWords>({
    {"utf-8", "this is not UTF-8 text", "save the file as UTF-8"},
    {"nested value depth", "lists or braces are nested too deep", "a list of points is two deep"},
    {"control character", "quoted text is not closed before its line ends",
     "put a quotation mark at its end"},
    {"escape sequence", "quoted text has a \\ that means nothing here",
     "for the sign itself write \\\\"},
    {"array: expected comma", "a comma is missing in this list",
     "put commas between the items of a list: [[0, 0], [12, 0]]"},
    {"end-of-file", "the file ends before this is closed",
     "a list ends with ], quoted text with its quotation mark"},
    {"table header", "this header is not closed",
     "a header is a name in brackets, alone on its line: [weather] or [[zone]]"},
    {"inline table", "these braces are not closed on their line",
     "write them as in { width = 1, finish = \"broom\" }"},
    {"expected '='", "there is no = between a key and its value",
     "a line is a key, = and its value, such as high = 66; a comment starts with #"},
    {"expected value",
     "there is no value after the =", "write one, or put # before the line to leave it out"},
    {"expected a comment or whitespace", "there is something after the value",
     "one value a line; a comment starts with #"},
    {"expected bare key", "a line starts with a key, such as high = 66, or with a header",
     "a key has only letters, digits and _; a comment starts with #"},
});

/// The name that a description has in quotation marks, with them.
std::string_view quoted_name(std::string_view description) {
  return description.substr(std::min(description.find('\''), description.size()));
}

}  // namespace

TomlFault toml_fault(std::string_view description) {
  description = description.substr(0, description.find(" (TOML_"));
  if (description.find("cannot redefine") != std::string_view::npos) {
    return {fmt::format("{} is already there", quoted_name(description)), "keep one of the two"};
  }
  for (const FaultWords& each : fault_words) {
    if (description.find(each.part) == std::string_view::npos) continue;
    return {std::string(each.message), std::string(each.next_step)};
  }
  return {"this line cannot be read", "a line is a key, = and its value, such as high = 66"};
}

}  // namespace slabtide
