#include "day/practice/sobol_table.h"

#include <cstdint>

#include <doctest/doctest.h>
#include <boost/random/sobol.hpp>

namespace slabtide {

// Source: Boost.Random's own table, of the data of Joe and Kuo (2008).
TEST_CASE("the sequence is Boost.Random's own") {
  boost::random::sobol theirs(uncertain_input_count);
  boost::random::sobol_engine<std::uint_least64_t, 64, SobolTable> ours(uncertain_input_count);
  std::size_t same = 0;
  constexpr std::size_t figures = 2048 * uncertain_input_count;
  for (std::size_t i = 0; i < figures; ++i) same += theirs() == ours() ? 1 : 0;
  CHECK(same == figures);
}

}  // namespace slabtide
