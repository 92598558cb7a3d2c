#pragma once

#include "slabtide/cli/commands.h"

namespace slabtide {

extern const Command note_command;

}  // namespace slabtide
