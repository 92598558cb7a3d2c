#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide quick`: the same slab in the sun and in the shade, without a job file.
extern const Command quick_command;

}  // namespace slabtide
