#pragma once

#include <string>
#include <vector>

#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// The reading as a journal's line, which `read_journal` reads back; with its line break. The
/// hour on the site's clock, with its offset where that hour comes twice; the value in the job's
/// usual unit, to a tenth.
std::string journal_line(const Observation& reading, const Job& job);

/// A reading in the words of a command line.
struct TypedObservation {
  std::string at;  ///< an hour or an instant
  std::string reading;
  std::vector<std::string> value;  ///< a number and its unit, in one word or two; may be empty
  std::string zone;
  std::string part;
};

/// As a journal's line, with its line break, for `read_journal` to judge; a number alone gets the
/// job's usual unit.
std::string typed_line(const TypedObservation& typed, const Job& job);

/// What a new journal starts with: a remark on what it holds.
std::string journal_heading(const Job& job);

/// "Thu 14 May 2026 11:05  landing, border: surface temperature 88 °F".
std::string observation_sentence(const Observation& reading, const Job& job);

}  // namespace slabtide
