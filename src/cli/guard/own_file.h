#pragma once

#include <string>
#include <string_view>

namespace slabtide {

/// The kinds of file that the program writes.
enum class FileKind { page, calendar, table, json, forecast, journal, book, job };

/// "a page", as a sentence has it.
std::string_view words_of(FileKind kind);

/// What --write makes of a file with that ending, such as ".html"; a table of any other.
FileKind kind_of_ending(std::string_view ending);

/// Whether a file with this text may make way for one of that kind: one that the program wrote or,
/// of forecasts, journals and books, would read. Told by marks that the program's own files bear,
/// not by names. An empty file may. Not so a job, nor a forecast typed by hand: nothing brings
/// those back.
bool may_make_way(FileKind kind, std::string_view text);

/// What a text is, for a message: "a job file", "a calendar of another program", or how it begins.
std::string what_it_is(std::string_view text);

}  // namespace slabtide
