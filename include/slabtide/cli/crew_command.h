#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command crew_command;

}  // namespace slabtide
