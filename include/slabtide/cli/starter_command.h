#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command starter_command;

}  // namespace slabtide
