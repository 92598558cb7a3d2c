#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide plan`: the day of a pour.
extern const Command plan_command;

}  // namespace slabtide
