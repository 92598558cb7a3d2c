#include "toml_tree.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <sstream>

#include <fmt/format.h>
#include <toml++/toml.h>

#include "core/text.h"
#include "loose_values.h"
#include "quantity.h"
#include "toml_fault.h"

namespace slabtide {

namespace {

constexpr std::size_t largest_bytes = std::size_t{1024} * 1024;
/// Limits how deep a dotted key can nest, which the parser's own limit does not count.
constexpr std::size_t longest_line_bytes = 4096;
/// Deeper than any job file; a table in a table in a list is 3.
constexpr int deepest = 16;

Diagnostic fault(std::string message, SourcePosition where, std::string next_step) {
  return {Severity::error, "", std::move(message), where, std::nullopt, std::move(next_step)};
}

bool is_text(char c) {
  const auto byte = static_cast<unsigned char>(c);
  constexpr unsigned char space = 0x20;
  constexpr unsigned char del = 0x7F;
  return (byte >= space && byte != del) || c == '\t' || c == '\r';
}

std::optional<Diagnostic> line_fault(std::string_view line, std::size_t number,
                                     const TomlKind& kind) {
  if (line.size() > longest_line_bytes) {
    return fault(fmt::format("this line is {} bytes long, the longest a {} may have is {}",
                             line.size(), kind.name, longest_line_bytes),
                 {number, 1}, "break the line: a list may go on over many lines");
  }
  const auto* const bad = std::find_if_not(line.begin(), line.end(), is_text);
  if (bad == line.end()) return std::nullopt;
  const auto column = static_cast<std::size_t>(bad - line.begin()) + 1;
  return fault(fmt::format("this is no text file: it holds the byte 0x{:02X}",
                           static_cast<unsigned char>(*bad)),
               {number, column}, fmt::format("name a {}; {}", kind.name, kind.advice));
}

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    lines.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

/// Faults that can be found before parsing.
std::optional<Diagnostic> text_fault(std::string_view text, const TomlKind& kind) {
  if (text.size() > largest_bytes) {
    return fault(fmt::format("the text is {} bytes long, the most a {} may have is {}", text.size(),
                             kind.name, largest_bytes),
                 {1, 1}, fmt::format("name a {}; {}", kind.name, kind.advice));
  }
  const auto lines = lines_of(text);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (auto found = line_fault(lines[i], i + 1, kind)) return found;
  }
  return std::nullopt;
}

/// Where a piece of the loosely read text stands in what was given.
SourcePosition place_of(const toml::source_region& region, const LooseText& loose) {
  return loose.original({region.begin.line, region.begin.column});
}

/// Thrown within this file if a document nests too deeply to be traversed safely.
struct TooDeep {
  SourcePosition where;
};

bool earlier(const TomlEntry& a, const TomlEntry& b) {
  return a.where.line != b.where.line ? a.where.line < b.where.line
                                      : a.where.column < b.where.column;
}

template <class Moment>
TomlMoment moment_of(const toml::value<Moment>& value) {
  std::ostringstream text;
  text << value.get();
  return {text.str()};
}

/// Converts the parser's nodes into TomlTable and TomlValue.
class TreeBuilder {
 public:
  TreeBuilder(std::string_view text, const LooseText& loose)
      : lines_(lines_of(text)), loose_(loose) {}

  TomlTable table_of(const toml::table& table, int depth = 0) const {
    TomlTable result;
    result.where = place_of(table.source(), loose_);
    result.has_header = !table.is_inline() && opens_with_bracket(result.where.line);
    for (const auto& [key, node] : table) {
      result.entries.push_back(
          {std::string(key.str()), place_of(key.source(), loose_), value_of(node, depth + 1)});
    }
    std::stable_sort(result.entries.begin(), result.entries.end(), earlier);
    return result;
  }

 private:
  bool opens_with_bracket(std::size_t line) const {
    if (line == 0 || line > lines_.size()) return false;
    const auto text = lines_[line - 1];
    return text.substr(std::min(text.find_first_not_of(" \t"), text.size())).starts_with('[');
  }

  TomlArray array_of(const toml::array& array, int depth) const {
    TomlArray result;
    for (const auto& node : array) result.push_back(value_of(node, depth + 1));
    return result;
  }

  TomlValue value_of(const toml::node& node, int depth) const {
    const SourcePosition where = place_of(node.source(), loose_);
    if (depth > deepest) throw TooDeep{where};
    switch (node.type()) {
      case toml::node_type::table:
        return {table_of(*node.as_table(), depth), where};
      case toml::node_type::array:
        return {array_of(*node.as_array(), depth), where};
      case toml::node_type::string:
        return {node.as_string()->get(), where};
      case toml::node_type::integer:
        return {static_cast<double>(node.as_integer()->get()), where};
      case toml::node_type::floating_point:
        return {node.as_floating_point()->get(), where};
      case toml::node_type::boolean:
        return {node.as_boolean()->get(), where};
      case toml::node_type::date:
        return {moment_of(*node.as_date()), where};
      case toml::node_type::time:
        return {moment_of(*node.as_time()), where};
      case toml::node_type::date_time:
        return {moment_of(*node.as_date_time()), where};
      case toml::node_type::none:
        break;
    }
    return {std::string(), where};
  }

  std::vector<std::string_view> lines_;
  const LooseText& loose_;
};

/// Lines that open a table, with the first name in their header.
using HeaderLines = std::map<std::size_t, std::string_view>;

void add_headers(const TomlTable& table, std::string_view name, HeaderLines& lines);

void add_headers(const TomlValue& value, std::string_view name, HeaderLines& lines) {
  if (const auto* const table = std::get_if<TomlTable>(&value.held)) {
    if (table->has_header) lines.emplace(table->where.line, name);
    add_headers(*table, name, lines);
  } else if (const auto* const array = std::get_if<TomlArray>(&value.held)) {
    for (const auto& element : *array) add_headers(element, name, lines);
  }
}

void add_headers(const TomlTable& table, std::string_view name, HeaderLines& lines) {
  for (const auto& entry : table.entries) {
    add_headers(entry.value, name.empty() ? std::string_view(entry.key) : name, lines);
  }
}

/// `[name.rest]` becomes `[     rest]`, and `[name]` an empty line.
std::string without_first_name(std::string_view header) {
  std::string line(header);
  const std::size_t name = line.find_first_not_of(" \t[");
  const std::size_t dot = line.find('.');
  const std::size_t comment = std::min(line.find('#'), line.size());
  if (dot >= comment) return {};
  std::fill(line.begin() + static_cast<std::ptrdiff_t>(name),
            line.begin() + static_cast<std::ptrdiff_t>(dot) + 1, ' ');
  return line;
}

}  // namespace

Parsed<TomlTable> read_toml(std::string_view text, const TomlKind& kind) {
  if (auto found = text_fault(text, kind)) return {std::nullopt, {std::move(*found)}};
  const LooseText loose = quote_loose_values(text);
  try {
    TomlTable tree = TreeBuilder(text, loose).table_of(toml::parse(loose.text));
    if (kind.name != job_toml.name && find(tree, "site") != nullptr) {
      return {std::nullopt,
              {fault(fmt::format("this is a job file, expected a {}", kind.name), {1, 1},
                     std::string(kind.advice))}};
    }
    return {std::move(tree), {}};
  } catch (const toml::parse_error& error) {
    const TomlFault words = toml_fault(error.description());
    return {std::nullopt,
            {fault(words.message, place_of(error.source(), loose),
                   fmt::format("{}; {}", words.next_step, kind.advice))}};
  } catch (const TooDeep& deep) {
    return {std::nullopt,
            {fault(fmt::format("tables or lists are nested over {} levels deep", deepest),
                   deep.where, std::string(kind.advice))}};
  }
}

const TomlEntry* find(const TomlTable& table, std::string_view key) {
  const auto found = std::find_if(table.entries.begin(), table.entries.end(),
                                  [&](const TomlEntry& entry) { return entry.key == key; });
  return found == table.entries.end() ? nullptr : &*found;
}

std::string shown(const TomlValue& value) {
  constexpr std::size_t longest = 40;
  if (const auto* const number = std::get_if<double>(&value.held)) {
    return typed_number(*number);
  }
  if (const auto* const text = std::get_if<std::string>(&value.held)) {
    if (text->size() <= longest) return fmt::format("\"{}\"", *text);
    return fmt::format("text of {} bytes", text->size());
  }
  if (const auto* const yes = std::get_if<bool>(&value.held)) return *yes ? "true" : "false";
  if (const auto* const moment = std::get_if<TomlMoment>(&value.held)) return moment->text;
  return std::holds_alternative<TomlArray>(value.held) ? "a list" : "a table";
}

std::string cut_out(std::string_view name, const TomlTable& root, std::string_view text) {
  if (find(root, name) == nullptr) return {};
  HeaderLines headers;
  add_headers(root, {}, headers);
  std::string result;
  bool inside = false;
  std::size_t number = 0;
  for (const auto line : lines_of(text)) {
    const auto header = headers.find(++number);
    if (header != headers.end()) inside = header->second == name;
    if (inside) result += header == headers.end() ? std::string(line) : without_first_name(line);
    result += '\n';
  }
  return result;
}

}  // namespace slabtide
