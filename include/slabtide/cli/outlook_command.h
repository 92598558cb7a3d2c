#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command outlook_command;

}  // namespace slabtide
