#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command plan_command;

}  // namespace slabtide
