#pragma once

#include <span>

#include "command.h"

namespace slabtide {

/// All commands, in the order help lists them.
std::span<const Command> commands();

}  // namespace slabtide
