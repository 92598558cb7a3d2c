#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide fetch`: the hourly forecast of a job's site; the only command that uses the network.
extern const Command fetch_command;

}  // namespace slabtide
