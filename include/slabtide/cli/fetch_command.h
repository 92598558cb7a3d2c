#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command fetch_command;

}  // namespace slabtide
