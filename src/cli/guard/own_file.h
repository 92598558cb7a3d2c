#pragma once

#include <string>
#include <string_view>

namespace slabtide {

/// The kinds of file that the program writes.
enum class FileKind { page, calendar, table, json, forecast, journal, book, job, planner };

/// The kind in a sentence: "a page".
std::string_view words_of(FileKind kind);

/// The kind that --write makes for an ending such as ".html"; a table for unknown endings.
FileKind kind_of_ending(std::string_view ending);

/// Whether a file with this text may be replaced by one of that kind: the program wrote it or, for
/// forecasts, journals and books, could read it. Decided by marks in the program's own files, not
/// by names. An empty file may be replaced. A job may not, nor a forecast typed by hand, because
/// nothing can restore them.
bool may_make_way(FileKind kind, std::string_view text);

/// What a text is, for a message: "a job file", "a calendar of another program", or its beginning.
std::string what_it_is(std::string_view text);

}  // namespace slabtide
