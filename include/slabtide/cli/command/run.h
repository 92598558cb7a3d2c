#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace slabtide {

/// Runs the program with its arguments (without the program's name). Returns the exit code: 0 done,
/// 1 could not (file, network), 2 the input or the command line is wrong.
int run(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);

}  // namespace slabtide
