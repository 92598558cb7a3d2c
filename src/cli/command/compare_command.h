#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide compare`: what can still be ordered or changed, tried in turn.
extern const Command compare_command;

}  // namespace slabtide
