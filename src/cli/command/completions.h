#pragma once

#include <span>
#include <string>

#include "cli/line/command_line.h"

// What a shell completes after `slabtide`, from the same table as --help: commands, options, an
// option's choices (`us|si`), and files for arguments that are files.

namespace slabtide {

/// One script for all commands, for bash, zsh or fish.
std::string bash_completions(std::span<const CommandLine> commands);
std::string zsh_completions(std::span<const CommandLine> commands);
std::string fish_completions(std::span<const CommandLine> commands);

}  // namespace slabtide
