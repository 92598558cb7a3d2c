#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide crew`: who does what and when, and what to take along.
extern const Command crew_command;

}  // namespace slabtide
