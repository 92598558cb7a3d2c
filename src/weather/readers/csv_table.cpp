#include "csv_table.h"

#include <algorithm>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "findings.h"

#include "core/utf8.h"

namespace slabtide {
namespace {

constexpr std::string_view blanks = " \t";
constexpr std::size_t max_fields = 64;
/// A little over a year of hours.
constexpr std::size_t max_rows = 10'000;

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

/// Counts characters rather than bytes, as diagnostics do.
std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

/// Removes the first line from `text` and returns it.
std::string_view take_line(std::string_view& text) {
  const std::size_t end = std::min(text.find('\n'), text.size());
  std::string_view line = text.substr(0, end);
  text.remove_prefix(std::min(end + 1, text.size()));
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

/// Reads the fields of one line from the left.
class LineCutter {
 public:
  LineCutter(std::string_view line, std::size_t number, Findings& findings)
      : line_(line), number_(number), findings_(findings) {}

  std::optional<CsvRow> cut() {
    CsvRow row;
    for (bool more = true; more;) {
      skip_blanks();
      CsvField field{.text = {}, .where = here()};
      if (!take_field(field.text)) return std::nullopt;
      row.push_back(std::move(field));
      if (row.size() > max_fields) return too_many_fields();
      more = take_comma();
    }
    return row;
  }

 private:
  SourcePosition here() const { return {number_, characters(line_.substr(0, at_)) + 1}; }
  void skip_blanks() { at_ = std::min(line_.find_first_not_of(blanks, at_), line_.size()); }

  bool take_comma() {
    if (at_ == line_.size()) return false;
    ++at_;
    return true;
  }

  bool take_field(std::string& text) {
    if (at_ < line_.size() && line_[at_] == '"') return take_quoted(text);
    const std::size_t end = std::min(line_.find(',', at_), line_.size());
    text = trimmed(line_.substr(at_, end - at_));
    at_ = end;
    return true;
  }

  bool take_quoted(std::string& text) {
    const SourcePosition opened = here();
    for (++at_; at_ < line_.size(); ++at_) {
      if (line_[at_] != '"') {
        text += line_[at_];
      } else if (at_ + 1 < line_.size() && line_[at_ + 1] == '"') {
        text += line_[++at_];
      } else {
        return close_quote(text);
      }
    }
    findings_.error(opened, "", "the quote opened here does not close on its line");
    return false;
  }

  bool close_quote(std::string& text) {
    ++at_;
    skip_blanks();
    text = std::string{trimmed(text)};
    if (at_ == line_.size() || line_[at_] == ',') return true;
    findings_.error(here(), "", "text after a closing quote, expected a comma");
    return false;
  }

  std::optional<CsvRow> too_many_fields() {
    findings_.error(here(), "", fmt::format("more than {} fields on a line", max_fields));
    return std::nullopt;
  }

  std::string_view line_;
  std::size_t number_;
  Findings& findings_;
  std::size_t at_ = 0;
};

CsvComment comment_of(std::string_view line, std::size_t number) {
  const std::size_t start = std::min(line.find_first_not_of(" \t#"), line.size());
  return {trimmed(line.substr(start)), {number, characters(line.substr(0, start)) + 1}};
}

void take_into(CsvTable& table, std::string_view line, std::size_t number, Findings& findings) {
  const std::string_view content = trimmed(line);
  if (content.empty()) return;
  if (content.front() == '#') {
    table.comments.push_back(comment_of(line, number));
  } else if (auto row = LineCutter{line, number, findings}.cut()) {
    table.rows.push_back(std::move(*row));
  }
}

}  // namespace

Parsed<CsvTable> read_csv_table(std::string_view text) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  CsvTable table;
  Findings findings;
  for (std::size_t number = 1; !text.empty() && !findings.full(); ++number) {
    take_into(table, take_line(text), number, findings);
    if (table.rows.size() <= max_rows) continue;
    findings.error({number, 1}, "", fmt::format("more than {} rows", max_rows),
                   "keep the days around the pour");
    break;
  }
  if (findings.has_error()) return {std::nullopt, findings.take()};
  return {std::move(table), findings.take()};
}

}  // namespace slabtide
