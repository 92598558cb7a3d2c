#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide starter`: a commented job file to start from.
extern const Command starter_command;

}  // namespace slabtide
