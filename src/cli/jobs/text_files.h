#pragma once

#include "slabtide/request/plan/sources.h"

namespace slabtide {

/// Sources on disk, with the system's time zones and clock.
const Sources& text_files();

}  // namespace slabtide
