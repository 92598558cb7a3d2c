#include "slabtide/core/version.h"

namespace slabtide {

std::string_view version() { return SLABTIDE_VERSION; }

}  // namespace slabtide
