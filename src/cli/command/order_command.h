#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide order`: the order as the plant hears it.
extern const Command order_command;

}  // namespace slabtide
