#pragma once

#include "slabtide/core/clock.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// How the job's readers count the hours: as the job says, else as its units have it.
ClockStyle clock_style(const Job& job);

/// The clock that everything told about the job is told by.
Clock clock_of(const Job& job);

}  // namespace slabtide
