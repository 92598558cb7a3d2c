#pragma once

#include "slabtide/cli/command/command.h"

namespace slabtide {

/// `slabtide starter`: a commented job file to start from.
extern const Command starter_command;

}  // namespace slabtide
