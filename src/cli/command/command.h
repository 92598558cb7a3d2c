#pragma once

#include <iosfwd>

#include "cli/line/command_line.h"

namespace slabtide {

/// A command: what it takes and what it does. `run` is given a line that was read according to
/// `line()`, and returns the exit code.
struct Command {
  CommandLine (*line)();
  int (*run)(const ParsedLine& line, std::ostream& out, std::ostream& err);
};

}  // namespace slabtide
