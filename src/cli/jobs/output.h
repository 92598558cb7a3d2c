#pragma once

#include <iosfwd>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cli/guard/write_guard.h"
#include "cli/line/command_line.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/report/words/text_style.h"
#include "slabtide/request/write/report_formats.h"

namespace slabtide {

/// Colour if `out` is the program's own standard output and a terminal, and neither NO_COLOR is set
/// (no-color.org) nor TERM is dumb. As wide as COLUMNS says, else the terminal, from 60 to 80.
TextStyle style_for(const std::ostream& out);

/// `--write FILE`, many times: "write the plan to FILE too, .json or .csv as its ending says"; and
/// `--force`.
void add_write_options(CommandLine& line, std::string_view what,
                       const std::vector<std::string_view>& endings);

/// A file ready to be written.
struct MadeFile {
  std::string path;
  std::string text;
};

/// The ending of a file's name, including the dot.
std::string ending_of(const std::string& path);
/// The file's present text; empty if it cannot be read.
std::string text_before(const std::string& path);
/// ".json, .ics or .csv".
std::string endings_words(const std::vector<std::string_view>& endings);
/// A message about the first path with another ending; empty if there is none.
std::string ending_fault(const std::vector<std::string>& paths,
                         const std::vector<std::string_view>& endings);
/// Writes the files one after another, each completely or not at all. Returns the exit code.
int write_files(const std::vector<MadeFile>& files, const WriteGuard& guard, std::ostream& err);

/// The guard for the files that a command is asked to write, whose endings are checked first; empty
/// if they must not be written, which has then been reported.
std::optional<WriteGuard> guard_files(std::string_view command, const ParsedLine& line,
                                      const std::vector<std::string>& files,
                                      const std::vector<std::string_view>& endings,
                                      std::ostream& err);

/// Makes the text of every file before writing the first. The endings must have been checked.
template <class Facts>
int write_reports(const std::vector<std::string>& paths, std::span<const FileFormat<Facts>> formats,
                  const Facts& facts, UtcTime now, const WriteGuard& guard, std::ostream& err,
                  const CalendarScope& calendar = {}) {
  std::vector<MadeFile> made;
  for (const std::string& path : paths) {
    auto text = made_as(ending_of(path), formats, facts, {now, text_before(path), calendar});
    if (text) made.push_back({path, std::move(*text)});
  }
  return write_files(made, guard, err);
}

/// The reports that a command writes to files besides what it prints.
template <class Facts>
struct AskedReports {
  std::vector<std::string> files;
  std::span<const FileFormat<Facts>> formats;
  WriteGuard guard;

  /// Returns the exit code; where that is not `exit_done`, nothing is to be printed.
  int write(const Facts& facts, UtcTime now, std::ostream& err) const {
    return write_reports(files, formats, facts, now, guard, err);
  }
};

/// What the line's --write asks for, looked at before anything is computed; empty where it must
/// not be written, which was told.
template <class Facts>
std::optional<AskedReports<Facts>> asked_reports(std::string_view command, const ParsedLine& line,
                                                 std::span<const FileFormat<Facts>> formats,
                                                 std::ostream& err) {
  const std::vector<std::string> files = line.texts("write");
  const auto guard = guard_files(command, line, files, endings_of(formats), err);
  if (!guard) return std::nullopt;
  return AskedReports<Facts>{files, formats, *guard};
}

}  // namespace slabtide
