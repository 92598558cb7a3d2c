#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide saw`: the joints, and the cuts in working order.
extern const Command saw_command;

}  // namespace slabtide
