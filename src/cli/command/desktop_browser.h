#pragma once

#include <filesystem>
#include <optional>

#include "slabtide/core/file_error.h"

namespace slabtide {

/// Opens the page in the desktop's own browser (xdg-open, of the freedesktop.org tools), which goes
/// on after this program has ended. What is wrong, if within three seconds it says that it cannot.
std::optional<FileError> open_in_browser(const std::filesystem::path& page);

}  // namespace slabtide
