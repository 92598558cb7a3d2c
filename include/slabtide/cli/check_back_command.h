#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command check_back_command;

}  // namespace slabtide
