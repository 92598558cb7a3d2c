#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide note`: what was seen on the slab, into the job's journal.
extern const Command note_command;

}  // namespace slabtide
