#pragma once

#include "slabtide/request/plan/sources.h"

namespace slabtide {

/// Texts from files, the time zones of the system, and the clock.
const Sources& text_files();

}  // namespace slabtide
