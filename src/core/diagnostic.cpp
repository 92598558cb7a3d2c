#include "slabtide/core/diagnostic.h"

#include <algorithm>
#include <tuple>

#include <fmt/format.h>

#include "text.h"
#include "utf8.h"

namespace slabtide {
namespace {

constexpr std::size_t quote_indent = 4;
constexpr std::size_t quote_columns = 80 - quote_indent;
constexpr std::string_view cut_mark = "...";
/// How many characters are examined on either side of the caret, since a line may be a whole
/// forecast. More than a quotation shows, because combining marks take no column.
constexpr std::size_t nearby_chars = 400;
constexpr std::size_t max_shown = 20;
/// A key longer than this would hide the message.
constexpr std::size_t longest_key = 80;

/// Line `number` (from 1) without its line break; empty if the text has no such line.
std::string_view line_of(std::string_view text, std::size_t number) {
  if (text.starts_with(byte_order_mark)) {
    text.remove_prefix(byte_order_mark.size());
  }
  for (std::size_t line = 1; line < number; ++line) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) {
      return {};
    }
    text.remove_prefix(end + 1);
  }
  std::string_view result = text.substr(0, text.find('\n'));
  if (result.ends_with('\r')) {
    result.remove_suffix(1);
  }
  return result;
}

/// A character as it is quoted, and the terminal columns it takes.
struct QuotedChar {
  std::string text;
  std::size_t columns = 1;
};

std::vector<QuotedChar> quoted_chars(std::string_view line) {
  std::vector<QuotedChar> result;
  for (std::string& shown : shown_characters(line)) {
    const std::size_t columns = display_width(shown);
    result.push_back({std::move(shown), columns});
  }
  return result;
}

/// The part [begin, end) of a line that is quoted.
struct Window {
  std::size_t begin = 0;
  std::size_t end = 0;
};

std::size_t columns_of(const std::vector<QuotedChar>& line, Window part) {
  std::size_t columns = 0;
  for (std::size_t i = part.begin; i < part.end; ++i) {
    columns += line[i].columns;
  }
  return columns;
}

/// The part around `caret` that fits the quotation. It grows to both sides in turn, so the caret is
/// near the middle unless the line begins or ends sooner.
Window window_around(const std::vector<QuotedChar>& line, std::size_t caret) {
  const std::size_t behind_end = caret == line.size() ? 1 : 0;
  if (columns_of(line, {0, line.size()}) + behind_end <= quote_columns) {
    return {0, line.size()};
  }
  const std::size_t room = quote_columns - 2 * cut_mark.size();
  Window window{caret, caret};
  std::size_t used = 0;
  for (bool grown = true; grown;) {
    grown = false;
    if (window.end < line.size() && used + line[window.end].columns <= room) {
      used += line[window.end++].columns;
      grown = true;
    }
    if (window.begin > 0 && used + line[window.begin - 1].columns <= room) {
      used += line[--window.begin].columns;
      grown = true;
    }
  }
  return window;
}

/// The character to point at: the one at `column`, the letter its combining mark belongs to, or the
/// end of the line.
std::size_t caret_of(const std::vector<QuotedChar>& line, std::size_t column) {
  std::size_t caret = std::min(column - 1, line.size());
  while (caret > 0 && caret < line.size() && line[caret].columns == 0) {
    --caret;
  }
  return caret;
}

/// A part of a line, and the column counted from its start.
struct PartOfLine {
  std::string_view text;
  std::size_t column = 1;
};

PartOfLine nearby(std::string_view line, std::size_t column) {
  const auto next = [line](std::size_t at) {
    return at < line.size() ? at + first_utf8(line.substr(at)).bytes : at;
  };
  std::size_t start = 0;
  std::size_t caret = 0;
  std::size_t passed = 0;
  for (; passed + 1 < column && caret < line.size(); ++passed) {
    caret = next(caret);
    start = passed < nearby_chars ? start : next(start);
  }
  std::size_t end = caret;
  for (std::size_t i = 0; i < nearby_chars; ++i) {
    end = next(end);
  }
  return {line.substr(start, end - start), std::min(passed, nearby_chars) + 1};
}

/// The part as it is quoted, with right-to-left text isolated and marks where the line was cut.
std::string shown_part(const std::vector<QuotedChar>& line, const Window& window) {
  std::string shown(window.begin > 0 ? cut_mark : "");
  for (std::size_t i = window.begin; i < window.end; ++i) {
    shown += line[i].text;
  }
  shown.erase(shown.find_last_not_of(' ') + 1);
  shown = printable(shown, shown.size());
  shown += window.end < line.size() ? cut_mark : "";
  return shown;
}

std::string quotation(std::string_view line_text, std::size_t column) {
  const PartOfLine part = nearby(line_text, column);
  const std::vector<QuotedChar> line = quoted_chars(part.text);
  const std::size_t caret = caret_of(line, part.column);
  Window window = window_around(line, caret);
  std::string shown = shown_part(line, window);
  // A selector or joiner takes a column once the letter it modifies has been cut off.
  while (display_width(shown) > quote_columns && window.end > window.begin) {
    if (window.end > caret + 1) {
      --window.end;
    } else {
      ++window.begin;
    }
    shown = shown_part(line, window);
  }
  const std::size_t before =
      (window.begin > 0 ? cut_mark.size() : 0) + columns_of(line, {window.begin, caret});
  return fmt::format("{0:{1}}{2}\n{0:{3}}^\n", "", quote_indent, shown, quote_indent + before);
}

std::string heading(const Diagnostic& d, std::string_view path) {
  std::string out = printable(path);
  if (d.where) {
    out += fmt::format("{}{}:{}", out.empty() ? "" : ":", d.where->line, d.where->column);
  }
  out += out.empty() ? "" : ": ";
  out += d.key.empty() ? "" : printable(d.key, longest_key) + ": ";
  out += d.severity == Severity::warning ? "warning: " : "";
  return out + printable(d.message) + "\n";
}

/// Errors first, then by position; findings without a position come last of their severity.
bool comes_before(const Diagnostic* a, const Diagnostic* b) {
  const auto order = [](const Diagnostic& d) {
    const SourcePosition at = d.where.value_or(SourcePosition{});
    return std::tuple(d.severity == Severity::warning, !d.where, at.line, at.column);
  };
  return order(*a) < order(*b);
}

std::string counted(std::size_t number, std::string_view what) {
  return number == 0 ? "" : fmt::format("{} {}{}", number, what, number == 1 ? "" : "s");
}

std::string rest_counted(std::size_t errors, std::size_t warnings) {
  const std::string_view joint = errors > 0 && warnings > 0 ? " and " : "";
  return fmt::format("{}{}{} more not shown\n", counted(errors, "error"), joint,
                     counted(warnings, "warning"));
}

}  // namespace

bool has_error(const std::vector<Diagnostic>& diagnostics) {
  return std::any_of(diagnostics.begin(), diagnostics.end(),
                     [](const Diagnostic& d) { return d.severity == Severity::error; });
}

std::string render(const Diagnostic& diagnostic, std::string_view path, std::string_view text) {
  std::string out = heading(diagnostic, path);
  if (diagnostic.where) {
    const std::string_view line = line_of(text, diagnostic.where->line);
    const bool blank = line.find_first_not_of(" \t") == std::string_view::npos;
    out += blank ? "" : quotation(line, diagnostic.where->column);
  }
  if (diagnostic.also_where) {
    const std::string_view separator = path.empty() ? "line " : ":";
    out += fmt::format("  also here: {}{}{}\n", printable(path), separator,
                       diagnostic.also_where->line);
  }
  if (!diagnostic.next_step.empty()) {
    out += fmt::format("  {}\n", printable(diagnostic.next_step));
  }
  return out;
}

std::string render_all(const std::vector<Diagnostic>& diagnostics, std::string_view path,
                       std::string_view text) {
  std::vector<const Diagnostic*> ordered(diagnostics.size());
  std::transform(diagnostics.begin(), diagnostics.end(), ordered.begin(),
                 [](const Diagnostic& d) { return &d; });
  std::stable_sort(ordered.begin(), ordered.end(), comes_before);
  std::string out;
  std::size_t errors = 0;
  std::size_t warnings = 0;
  for (std::size_t i = 0; i < ordered.size(); ++i) {
    if (i < max_shown) {
      out += render(*ordered[i], path, text);
    } else {
      ++(ordered[i]->severity == Severity::error ? errors : warnings);
    }
  }
  return ordered.size() <= max_shown ? out : out + rest_counted(errors, warnings);
}

}  // namespace slabtide
