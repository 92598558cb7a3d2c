#pragma once

#include <optional>
#include <string>

#include "cli/fetch/fetch.h"
#include "command.h"

namespace slabtide {

/// `slabtide fetch`: the hourly forecast of a job's site. It and `starter --fetch` alone use the
/// network.
extern const Command fetch_command;

/// The clock, the waits and the terminal of this machine.
FetchWorld real_fetch_world();
/// The contact that the environment names; empty if it names none.
std::optional<std::string> usual_contact();

}  // namespace slabtide
