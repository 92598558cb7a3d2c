#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command quick_command;

}  // namespace slabtide
