#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command mixes_command;

}  // namespace slabtide
