#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide mixes`: shows what the mix book contains.
extern const Command mixes_command;

}  // namespace slabtide
