# Headers that nearly every source reads, compiled once: Boost.Date_Time alone costs more than most
# sources themselves. Nothing may rely on them: each source still includes what it uses.
set(slabtide_precompiled
  <algorithm> <array> <cmath> <cstddef> <functional> <limits> <map> <optional> <span> <stdexcept>
  <string> <string_view> <utility> <vector>
  <boost/date_time/posix_time/posix_time_types.hpp>
  <fmt/format.h>)
