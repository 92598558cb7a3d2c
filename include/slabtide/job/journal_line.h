#pragma once

#include <string>

#include "slabtide/job/job.h"
#include "slabtide/job/journal.h"

namespace slabtide {

/// The reading as a journal's line, which `read_journal` reads back; with its line break. The
/// hour on the site's clock, with its offset where that hour comes twice; the value in the job's
/// usual unit, to a tenth.
std::string journal_line(const FieldReading& reading, const Job& job);

/// What a new journal starts with: a remark on what it holds.
std::string journal_heading(const Job& job);

/// "Thu 14 May 2026 11:05  landing, border: surface temperature 88 °F".
std::string reading_sentence(const FieldReading& reading, const Job& job);

}  // namespace slabtide
