#pragma once

#include <vector>

#include "slabtide/job/model/job.h"

// Whether a job built in code is one that the library can plan. A job from `read_job` always is:
// both use limits.h.

namespace slabtide {

/// Error: std::invalid_argument if a value is outside limits.h or not finite, a time is not a valid
/// time, a text is not UTF-8, a shape cannot be built, or parts contradict each other (equal names,
/// a placing sequence that does not match the zones). The message names the field in SI:
/// "zone[2].thickness_m: got 0, expected 0.0508 to 0.6096".
void validate(const Job& job);

/// The same for parts of a job that functions take on their own.
void validate(const Mix& mix);
void validate(const std::vector<Admixture>& admixtures);
void validate(const TypedWeather& weather);
void validate(const Site& site);

}  // namespace slabtide
