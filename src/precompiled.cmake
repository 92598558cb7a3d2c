# Headers that almost every source needs, compiled once: Boost.Date_Time alone takes longer than
# most sources. No source may rely on them: each still includes what it uses.
set(slabtide_precompiled
  <algorithm> <array> <cmath> <cstddef> <functional> <limits> <map> <optional> <span> <stdexcept>
  <string> <string_view> <utility> <vector>
  <boost/date_time/posix_time/posix_time_types.hpp>
  <fmt/format.h>)
