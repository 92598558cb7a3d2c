#include "own_file.h"

#include <algorithm>
#include <array>
#include <sstream>

#include <fmt/format.h>

#include "core/utf8.h"
#include "job/records/read_journal.h"
#include "report/files/calendar.h"
#include "report/files/csv_days.h"
#include "report/files/csv_plan.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/job/records/journal.h"
#include "slabtide/job/records/mix_book.h"
#include "weather/readers/read_forecast.h"

namespace slabtide {

namespace {

constexpr std::string_view blanks = " \t\r\n";

std::string_view without_blanks(std::string_view text) {
  text.remove_prefix(std::min(text.find_first_not_of(blanks), text.size()));
  return text;
}

/// Removes `mark` and blanks before it from the front of `text`; false if something else is there.
bool take(std::string_view& text, std::string_view mark) {
  text = without_blanks(text);
  if (!text.starts_with(mark)) return false;
  text.remove_prefix(mark.size());
  return true;
}

/// Every page has this mark in its head (data/page/document.html).
bool is_page(std::string_view text) {
  constexpr std::string_view mark = R"(<meta name="generator" content="Slabtide">)";
  return text.substr(0, text.find("<title>")).find(mark) != std::string_view::npos;
}

/// What stands beside the planner's page names it near its beginning (src/planner/page/build.mjs).
bool is_planner_part(std::string_view text) {
  constexpr std::size_t beginning_bytes = 512;
  return text.substr(0, beginning_bytes).find("Slabtide planner") != std::string_view::npos;
}

bool is_calendar(std::string_view text) { return text.starts_with("BEGIN:VCALENDAR"); }

/// The mark must be before the first event, where only the calendar's own lines are.
bool is_own_calendar(std::string_view text) {
  const std::string_view head = text.substr(0, text.find("BEGIN:VEVENT"));
  return is_calendar(text) && head.find(calendar_product) != std::string_view::npos;
}

bool is_json(std::string_view text) {
  return take(text, "{") && take(text, "\"slabtide\"") && take(text, ":") && take(text, "{") &&
         take(text, "\"version\"");
}

/// A document from a service, as opposed to a table typed by hand.
bool is_document(std::string_view text) {
  return without_blanks(text).starts_with('{') && read_forecast(text, {}).ok();
}

/// What the complete lines of a text contain: observations (or lines that undo one), something
/// else, or nothing.
enum class Saying { readings, other, nothing };

/// A last line that a crash cut short and comments count as nothing.
Saying saying_of(std::string_view text) {
  std::istringstream lines{std::string(text.substr(0, text.rfind('\n') + 1))};
  Saying saying = Saying::nothing;
  for (std::string line; std::getline(lines, line);) {
    if (line.ends_with(unfinished_mark)) continue;
    std::istringstream words(line);
    std::string word;
    for (int i = 0; i < 3 && words >> word && !word.starts_with('#'); ++i) {
      if (observation_from_id(word) || word == undo_word) return Saying::readings;
      saying = Saying::other;
    }
  }
  return saying;
}

bool is_book(std::string_view text) { return read_mix_book(text).ok(); }

/// The beginning of the text, on one line.
std::string beginning(std::string_view text) {
  constexpr std::size_t longest = 40;
  std::string_view line = without_blanks(text);
  line = line.substr(0, line.find_first_of("\r\n"));
  const bool whole = line.size() <= longest && line.size() == without_blanks(text).size();
  std::string shown = printable(line.substr(0, longest));
  return fmt::format("a file that begins \"{}{}\"", shown, whole ? "" : " ...");
}

}  // namespace

std::string_view words_of(FileKind kind) {
  constexpr std::array<std::string_view, 9> words{"a page",
                                                  "a calendar",
                                                  "a table",
                                                  "a JSON file of plans",
                                                  "a forecast fetched",
                                                  "a journal of readings",
                                                  "a mix book",
                                                  "a job file",
                                                  "a part of the planner"};
  return words.at(static_cast<std::size_t>(kind));
}

FileKind kind_of_ending(std::string_view ending) {
  if (ending == ".html") return FileKind::page;
  if (ending == ".ics") return FileKind::calendar;
  return ending == ".json" ? FileKind::json : FileKind::table;
}

bool may_make_way(FileKind kind, std::string_view text) {
  if (text.empty()) return true;
  switch (kind) {
    case FileKind::page:
      return is_page(text);
    case FileKind::calendar:
      return is_own_calendar(text);
    case FileKind::table:
      return is_csv_plan(text) || is_csv_days(text);
    case FileKind::json:
      return is_json(text);
    case FileKind::forecast:
      return is_document(text);
    case FileKind::journal:
      return saying_of(text) != Saying::other;
    case FileKind::book:
      return is_book(text);
    case FileKind::planner:
      return is_planner_part(text);
    case FileKind::job:
      break;
  }
  return false;
}

std::string what_it_is(std::string_view text) {
  constexpr std::array told{FileKind::page, FileKind::calendar, FileKind::table, FileKind::json,
                            FileKind::forecast};
  for (const FileKind kind : told) {
    if (may_make_way(kind, text)) return std::string(words_of(kind));
  }
  if (is_calendar(text)) return "a calendar of another program";
  if (read_forecast(text, {}).ok()) return "a forecast table typed by hand";
  if (text.find('\0') != std::string_view::npos) return "no text";
  if (read_job(text).ok()) return "a job file";
  if (is_book(text)) return "a mix book";
  return saying_of(text) == Saying::readings ? "a journal of readings" : beginning(text);
}

}  // namespace slabtide
