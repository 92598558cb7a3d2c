#include "text_files.h"

#include <boost/date_time/posix_time/posix_time_types.hpp>

namespace slabtide {

const Sources& text_files() {
  static const Sources sources{[](const std::string& path) { return is_missing(path); },
                               [](const std::string& path) { return read_file(path); },
                               [](std::string_view name) { return TimeZone::load(name); },
                               [] { return boost::posix_time::second_clock::universal_time(); }};
  return sources;
}

}  // namespace slabtide
