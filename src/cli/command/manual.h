#pragma once

#include <span>
#include <string>

#include "cli/line/command_line.h"

namespace slabtide {

/// slabtide(1): the program and its commands, in the man macros.
std::string manual_page(std::span<const CommandLine> commands);

/// slabtide-plan(1) and so on: one command, from the same table as its --help.
std::string manual_page(const CommandLine& command);

}  // namespace slabtide
