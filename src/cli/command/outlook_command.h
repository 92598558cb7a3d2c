#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide outlook`: the weather of the pour's day by the hour, and whether to pour.
extern const Command outlook_command;

}  // namespace slabtide
