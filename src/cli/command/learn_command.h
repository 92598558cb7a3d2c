#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide learn`: puts finished pours into the mix book.
extern const Command learn_command;

}  // namespace slabtide
