#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide fetch`: the hourly forecast of a job's site; the only command on the network.
extern const Command fetch_command;

}  // namespace slabtide
