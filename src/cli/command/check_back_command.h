#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide check-back`: what was noted, beside what was planned.
extern const Command check_back_command;

}  // namespace slabtide
