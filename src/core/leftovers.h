#pragma once

#include <filesystem>

// Removal of half-written files.

namespace slabtide {

/// From here on, a signal that would end the process (SIGINT, SIGTERM, SIGHUP and similar) first
/// removes half-written files; then the process ends by that signal. Ignored signals stay ignored.
/// For a program's `main`, not for a library.
void remove_unfinished_on_signals();

/// Removes what killed runs on this machine left in the folder of `path`: only files with the names
/// that `replace_file` uses, and none that is still being written.
void sweep_leftovers(const std::filesystem::path& path);

}  // namespace slabtide
