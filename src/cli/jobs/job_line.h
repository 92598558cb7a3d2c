#pragma once

#include <cstddef>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "cli/guard/write_guard.h"
#include "cli/line/command_line.h"
#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/request/plan/job_request.h"
#include "slabtide/request/plan/plan_request.h"

namespace slabtide {

/// What the book is to a run that reads it.
inline constexpr const char* mix_book_role = "the mix book";

/// The option --book, as a command's table holds it.
Option book_option();

/// The options every command that reads a job shares: --forecast, --practice, --units,
/// --order, --book, --now.
std::vector<Option> job_options();

/// What those say, of the job at `path`.
JobRequest request_of(const ParsedLine& line, const std::string& path);

/// --draws, for commands that look at days that may come.
Option samples_option(std::size_t usual = usual_samples);

/// The draws that --draws asks for, else `usual`; where it is no such number, that is said.
std::optional<std::size_t> samples_asked(const ParsedLine& line, std::size_t usual,
                                         std::ostream& err);

/// What is read for the jobs of the line: jobs, journals, forecasts, mix books, practice. Of a job
/// that does not read, what is known without it.
std::vector<ReadFile> files_read(const ParsedLine& line);

/// The job at the line's operand, planned without bands. Absent where that cannot be; the findings
/// went to `err`.
std::optional<PlannedPour> plan_job(const ParsedLine& line, std::ostream& err);

/// The job at `path`, which is one of the line's operands, planned with bands from `samples` days,
/// on so many threads (0: as the machine has). Tells on `err` how far it is.
std::optional<PlannedPour> plan_job_with_bands(const std::string& path, const ParsedLine& line,
                                               std::size_t samples, int threads, std::ostream& err);

/// The job at the line's operand, with as many draws as --draws says.
std::optional<PlannedPour> plan_job_with_bands(const ParsedLine& line, std::ostream& err);

}  // namespace slabtide
