#pragma once

#include <filesystem>

// What must not be left behind of files that were not finished.

namespace slabtide {

/// From here on a signal that ends the process (SIGINT, SIGTERM, SIGHUP and their like) first
/// takes away what is half written; the process then ends by that signal. Signals that are
/// ignored stay so. For a program's `main`, not for a library.
void remove_unfinished_on_signals();

/// Takes away what killed runs of this machine left in the folder that `path` leads to: only
/// files under the names that `replace_file` writes by, and none that anyone still writes.
void sweep_leftovers(const std::filesystem::path& path);

}  // namespace slabtide
