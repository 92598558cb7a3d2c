#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide days`: which day of a forecast to pour.
extern const Command days_command;

}  // namespace slabtide
