#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command learn_command;

}  // namespace slabtide
