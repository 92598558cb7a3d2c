#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "slabtide/cli/line/command_line.h"
#include "slabtide/job/records/mix_book.h"

namespace slabtide {

/// What the book is to a run that reads it.
inline constexpr const char* mix_book_role = "the mix book";

/// The mix book a command uses: --book, or the one beside the job.
std::string book_path(const ParsedLine& line, const std::string& job_path);

/// The book; an empty one where there is no such file. Absent where it does not read: the
/// findings went to `err`.
std::optional<MixBook> load_book(const std::string& path, std::ostream& err);

/// The option --book, as a command's table holds it.
Option book_option();

}  // namespace slabtide
