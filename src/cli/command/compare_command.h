#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide compare`: tries what can still be ordered or changed, one choice at a time.
extern const Command compare_command;

}  // namespace slabtide
