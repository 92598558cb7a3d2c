#pragma once

#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "slabtide/day/practice/practice.h"

namespace slabtide::test {

/// The message about a practice file that cannot be read.
inline std::string practice_fault(std::string_view toml) {
  const auto reading = read_practice(toml, default_practice());
  CHECK(!reading.ok());
  return render_all(reading.diagnostics, "mine.toml", toml);
}

}  // namespace slabtide::test
