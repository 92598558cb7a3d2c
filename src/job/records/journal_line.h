#pragma once

#include <string>
#include <vector>

#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"

namespace slabtide {

/// The observation as a journal line with its line break, which `read_journal` reads back. The time
/// is on the site's clock, with its offset if that time occurs twice; the value is in the job's
/// usual unit, to a tenth.
std::string journal_line(const Observation& reading, const Job& job);

/// An observation in the words of a command line.
struct TypedObservation {
  std::string at;  ///< a time or an instant
  std::string reading;
  std::vector<std::string> value;  ///< a number and its unit, as one word or two; may be empty
  std::string zone;
  std::string part;
};

/// The same as a journal line with its line break, for `read_journal` to check; a number without a
/// unit gets the job's usual unit.
std::string typed_line(const TypedObservation& typed, const Job& job);

/// What a new journal starts with: a comment on what it contains.
std::string journal_heading(const Job& job);

/// "Thu 14 May 2026 11:05  landing, border: surface temperature 88 °F".
std::string observation_sentence(const Observation& reading, const Job& job);

}  // namespace slabtide
