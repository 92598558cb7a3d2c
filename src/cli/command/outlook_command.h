#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide outlook`: the pour day's weather by the hour, and whether to pour.
extern const Command outlook_command;

}  // namespace slabtide
