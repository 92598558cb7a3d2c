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

/// The role of the book for a run that reads it.
inline constexpr const char* mix_book_role = "the mix book";

/// The option --book.
Option book_option();

/// The options that all commands reading a job share: --forecast, --practice, --units, --clock,
/// --order, --book, --now.
std::vector<Option> job_options();

/// The request for the job at `path`, with the values of these options.
JobRequest request_of(const ParsedLine& line, const std::string& path);

/// The option --draws, for commands that sample days.
Option samples_option(std::size_t usual = usual_samples);

/// The number of samples that --draws asks for, else `usual`. Empty if its value is invalid, which
/// has then been reported.
std::optional<std::size_t> samples_asked(const ParsedLine& line, std::size_t usual,
                                         std::ostream& err);

/// The files read for the jobs of the command line: jobs, journals, forecasts, mix books, practice.
/// For a job that cannot be read, those known without it.
std::vector<ReadFile> files_read(const ParsedLine& line);

/// The job of the line's operand, planned without bands. Absent if that is not possible; the
/// findings then went to `err`.
std::optional<PlannedPour> plan_job(const ParsedLine& line, std::ostream& err);

/// The job at `path`, one of the line's operands, planned with bands from `samples` days on
/// `threads` threads (0: as many as the machine has). Shows progress on `err`.
std::optional<PlannedPour> plan_job_with_bands(const std::string& path, const ParsedLine& line,
                                               std::size_t samples, int threads, std::ostream& err);

/// The job of the line's operand, with as many samples as --draws asks for.
std::optional<PlannedPour> plan_job_with_bands(const ParsedLine& line, std::ostream& err);

}  // namespace slabtide
