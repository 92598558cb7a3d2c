#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command compare_command;

}  // namespace slabtide
