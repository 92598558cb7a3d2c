#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide note`: adds what was observed on the slab to the job's journal.
extern const Command note_command;

}  // namespace slabtide
