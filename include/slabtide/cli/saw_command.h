#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command saw_command;

}  // namespace slabtide
