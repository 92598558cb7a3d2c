#include "call_off_words.h"

#include <fmt/format.h>

#include "day/pour/pour_span.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

std::string call_off_words(UtcTime first_batched, Date date, const Job& job,
                           const DaysRules& rules) {
  const Clock clock = clock_of(job);
  return fmt::format("by {}, {:g} h before the first load is batched at {}",
                     clock.time_seen_from(date, call_off_by(first_batched, rules)),
                     rules.call_off_h, clock.time_seen_from(date, first_batched));
}

}  // namespace slabtide
