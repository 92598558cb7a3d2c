#include "palette.h"

#include <fmt/format.h>

namespace slabtide {

std::string line_class(std::size_t index) {
  return fmt::format("line-{}", index % line_class_count + 1);
}

}  // namespace slabtide
