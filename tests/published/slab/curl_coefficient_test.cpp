#include "slab/stress/curl.h"

#include <array>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_curl_coefficient {

TEST_CASE("Bradbury's coefficient is its closed form to the digits tabled") {
  constexpr Published table{.what = "Bradbury's curling coefficient",
                            .source = "Bradbury 1938, closed form evaluated independently",
                            .status = "published",
                            .tolerance = 0.005};
  for (const auto& [ratio, c] :
       {std::array{2.0, 0.04}, std::array{3.0, 0.18}, std::array{4.0, 0.44}, std::array{5.0, 0.71},
        std::array{6.0, 0.91}, std::array{8.0, 1.08}, std::array{10.0, 1.08},
        std::array{12.0, 1.04}})
    check_row(table, fmt::format("L/l {}", ratio), c, curl_coefficient(ratio));
}

TEST_CASE("Bradbury's coefficient is what the chart shows") {
  constexpr Published chart{.what = "Bradbury's coefficient, chart",
                            .source = "University of Washington pavement notes, chart readings",
                            .status = "published",
                            .tolerance = 0.02,
                            .because = "a line's width on the chart, read by eye"};
  check_row(chart, "L/l 4.8", 0.68, curl_coefficient(4.8));
  check_row(chart, "L/l 4.1", 0.45, curl_coefficient(4.1));
}

}  // namespace published_curl_coefficient
