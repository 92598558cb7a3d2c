#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide crew`: who does what and when, and what to bring.
extern const Command crew_command;

}  // namespace slabtide
