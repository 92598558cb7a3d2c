#include "bad_input/cases.h"

#include <algorithm>
#include <cstddef>
#include <set>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "support/run_program.h"

namespace slabtide::test {
namespace {

using Lines = std::vector<std::string>;

[[noreturn]] void refuse(std::string_view what, std::string_view where) {
  throw std::runtime_error(fmt::format("{}: {}", what, where));
}

/// The lines of a text; a missing last line break is ignored.
Lines lines_of(std::string_view text) {
  Lines lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) refuse("the last line is not ended", text);
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end + 1);
  }
  return lines;
}

std::string joined(const Lines& lines) {
  std::string text;
  for (const auto& line : lines) text.append(line).push_back('\n');
  return text;
}

bool is_header(const std::string& line) { return line.starts_with("== "); }

/// Lines and what replaces them.
struct Change {
  Lines before;
  Lines after;
};

Change change_of(Lines::const_iterator from, Lines::const_iterator end) {
  Change change;
  for (; from != end; ++from) {
    const char sign = from->empty() ? ' ' : from->front();
    if ((from->size() > 1 && (*from)[1] != ' ') || (sign != ' ' && sign != '-' && sign != '+')) {
      refuse("a line begins with \"+ \", \"- \" or two spaces", *from);
    }
    const std::string line = from->size() > 2 ? from->substr(2) : "";
    if (sign != '+') change.before.push_back(line);
    if (sign != '-') change.after.push_back(line);
  }
  return change;
}

/// Makes one change; its lines must occur in exactly one place.
void make(const Change& change, Lines& text) {
  if (change.before == change.after) refuse("changes nothing", joined(change.after));
  if (change.before.empty()) {
    if (!text.empty()) refuse("says not where in the base", joined(change.after));
    text = change.after;
    return;
  }
  const Lines& lines = change.before;
  const auto found = std::search(text.begin(), text.end(), lines.begin(), lines.end());
  if (found == text.end()) refuse("does not stand in the base", joined(lines));
  if (std::search(found + 1, text.end(), lines.begin(), lines.end()) != text.end()) {
    refuse("stands in the base more than once", joined(lines));
  }
  const auto at = text.erase(found, found + std::ssize(lines));
  text.insert(at, change.after.begin(), change.after.end());
}

Case case_from(Lines::const_iterator from, Lines::const_iterator end) {
  Case one;
  one.name = from->substr(3);
  if (const std::size_t colon = one.name.find(": "); colon != std::string::npos) {
    one.base = one.name.substr(colon + 2);
    one.name.resize(colon);
  }
  const auto arrow = std::find(from, end, "=>");
  if (arrow == end) refuse("has no line \"=>\" before its message", one.name);
  one.edit.assign(from + 1, arrow);
  one.message = joined({arrow + 1, end});
  return one;
}

}  // namespace

CaseTable parse_cases(std::string_view text) {
  const Lines lines = lines_of(text);
  auto at = std::ranges::find_if(lines, is_header);
  CaseTable table{joined({lines.begin(), at}), {}};
  std::set<std::string> names;
  while (at != lines.end()) {
    const auto next = std::find_if(at + 1, lines.end(), is_header);
    // Cases are separated by an empty line.
    const bool last = next == lines.end();
    if (!last && !(next - 1)->empty()) refuse("an empty line is missing before", *next);
    table.cases.push_back(case_from(at, last ? next : next - 1));
    if (!names.insert(table.cases.back().name).second) {
      refuse("stands twice", table.cases.back().name);
    }
    at = next;
  }
  return table;
}

std::string case_table_text(const CaseTable& table) {
  std::string text = table.preamble;
  for (const Case& one : table.cases) {
    if (&one != &table.cases.front()) text += '\n';
    text += fmt::format("== {}{}{}\n", one.name, one.base.empty() ? "" : ": ", one.base);
    text += joined(one.edit) + "=>\n" + one.message;
  }
  return text;
}

std::string edited(const std::string& base, const std::vector<std::string>& edit) {
  Lines text = lines_of(base);
  for (auto at = edit.begin(); at != edit.end();) {
    const auto end = std::find(at, edit.end(), "...");
    make(change_of(at, end), text);
    at = end == edit.end() ? end : end + 1;
  }
  return joined(text);
}

std::string case_input(const Case& one, const std::filesystem::path& bases) {
  const std::string base = one.base.empty() ? "" : read_text(bases / (one.base + ".toml"));
  if (!one.base.empty() && base.empty()) refuse("there is no such base", one.base);
  try {
    return edited(base, one.edit);
  } catch (const std::runtime_error& error) {
    refuse(one.name, error.what());
  }
}

}  // namespace slabtide::test
