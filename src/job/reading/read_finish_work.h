#pragma once

#include "job/toml/table_reader.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The table `[finish_work]`: release agent and sealer, and their labels' waits.
FinishWork read_finish_work(TableReader& table);

/// A cure-and-seal is the pour's curing; other curing beside it, or powder under it, is a
/// finding at the table's own place.
void cure_with_sealer(TableReader& table, Job& job, bool curing_is_given);

}  // namespace slabtide
