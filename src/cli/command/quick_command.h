#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide quick`: the same slab in sun and in shade, without a job file.
extern const Command quick_command;

}  // namespace slabtide
