#pragma once

#include "slabtide/job/model/job.h"
#include "toml_tree.h"

namespace slabtide {

/// The tables of a job with what people type in its plain form, for readers other than ours: a
/// figure with its unit becomes a number under the key with that unit (`width = "4'6\""`:
/// `width_ft = 4.5`), a point's a number in the file's unit, a date a date, an angle degrees, yes
/// true. Whatever is in no such form stays as it is.
TomlTable with_plain_values(TomlTable tree);

}  // namespace slabtide
