#pragma once

#include <string_view>

// The data files the program carries inside, so that it runs from anywhere. The
// definitions are generated from data/ at build time (src/embedded.cmake).

namespace slabtide::embedded {

/// data/practice.toml, data/starter.toml and data/starter_short.toml.
std::string_view practice_toml();
std::string_view starter_toml();
std::string_view starter_short_toml();

}  // namespace slabtide::embedded
