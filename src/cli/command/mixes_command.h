#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide mixes`: what the mix book holds.
extern const Command mixes_command;

}  // namespace slabtide
