#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

#include "job/toml/quantity.h"
#include "job_text.h"
#include "slabtide/core/units.h"
#include "slabtide/job/reading/read_job.h"

// What a message says of a figure: the figure as it was typed, and the range in its unit.

namespace slabtide::test {
namespace {

struct Typed {
  std::string_view from;  ///< in `plain_job`
  std::string_view to;
  std::string_view message;
};

std::string message_of(const Typed& typed) {
  const auto reading = read_job(job_with(typed.from, typed.to));
  if (reading.ok() || reading.diagnostics.empty()) return "taken";
  return reading.diagnostics.front().message;
}

}  // namespace

TEST_CASE("an error shows what was typed, and the range in the unit it was typed in") {
  // The limits are ours (job/model/limits.h); the figures in other units are converted by hand with
  // 0.3048 m a foot, 25.4 mm an inch, 0.764555 m3 a yard, 1 mph = 0.44704 m/s.
  const std::vector<Typed> rows{
      // Shares and percent.
      {"cloud = 20", "cloud = 140", "got 140%, expected 0 to 100%"},
      {"cloud = 20", "cloud_share = 1.4", "got 1.4 as a share, expected 0 to 1 as a share"},
      {"cloud = 20", "cloud = \"140 pct\"", "got 140 pct, expected 0 to 100%"},
      {"w_cm = 0.45", "w_cm = 0.45\nfly_ash = 60.00001", "got 60.00001%, expected 0 to 60%"},
      {"w_cm = 0.45", "w_cm = 0.45\nfly_ash_share = 0.6\nslag_share = 0.4",
       "ash, slag and fume together are 1 as a share, expected at most 0.9 as a share"},
      {"w_cm = 0.45", "w_cm = 0.45\nfly_ash = 60\nslag = 40",
       "ash, slag and fume together are 100%, expected at most 90%"},
      // Temperatures.
      {"high = 68", "high = 168.25", "got 168.25 °F, expected -40 to 130 °F"},
      {"high = 68", "high = \"68 °C\"", "got 68 °C, expected -40 to 54.4 °C"},
      {"high = 68", "high_c = 68", "got 68 °C, expected -40 to 54.4 °C"},
      {"high = 68", "high = \"168 degrees\"", "got 168 degrees °F, expected -40 to 130 °F"},
      // Lengths.
      {"thickness = 4", "thickness = 4'6\"", "got 4'6\", expected 0.167 to 2 ft"},
      {"thickness = 4", "thickness = \"1 1/2\"", "got 1 1/2 in, expected 2 to 24 in"},
      {"thickness = 4", "thickness_mm = 1000000", "got 1000000 mm, expected 50.8 to 609 mm"},
      {"[12, 10]", "[12, 4000]", "got 4000, expected -3280 to 3280 ft"},
      {"[12, 10]", "[12, \"2000 m\"]", "got \"2000 m\", expected -1000 to 1000 m"},
      {"[[0, 0], [12, 0], [12, 10], [0, 10]]", "[[0, 0], [1200, 0], [1200, 10], [0, 10]]",
       "reaches over 1200 ft, expected at most 1000 ft"},
      {"outline = [[0, 0], [12, 0], [12, 10], [0, 10]]",
       "outline_m = [[0, 0], [400, 0], [400, 10], [0, 10]]",
       "reaches over 400 m, expected at most 305 m"},
      {"[[0, 0], [12, 0], [12, 10], [0, 10]]",
       R"([["0 m", 0], ["400 m", 0], ["400 m", 10], ["0 m", 10]])",
       "reaches over 400 m, expected at most 305 m"},
      // Wind, rates, amounts.
      {"wind = 10", "wind_km_h = 120", "got 120 km/h, expected 0 to 88.5 km/h"},
      {"start = \"08:00\"", "start = \"08:00\"\nplacing_rate_m3_h = 229.5",
       "got 229.5 m³/h, expected 0.383 to 229 m³/h"},
      {"cementitious = 564", "cement_kg_m3 = 400\nfly_ash = 60",
       "makes 1000 kg/m³ of cementitious with its ash, slag and fume, expected 119 to 711 kg/m³"},
      // Times.
      {"start = \"08:00\"", "start = \"08:00\"\ntransit = \"5 h\"", "got 5 h, expected 0 to 4 h"},
      {"start = \"08:00\"", "start = \"08:00\"\ntransit = \"4 h 30 min\"",
       "got 4 h 30 min, expected 0 to 4 h"},
      {"start = \"08:00\"", "start = \"08:00\"\ntransit = 240.5",
       "got 240.5 min, expected 0 to 240 min"},
  };
  for (const Typed& row : rows) {
    INFO(row.to);
    CHECK(message_of(row) == row.message);
  }
}

TEST_CASE("whatever lies within the range that is shown is in range") {
  // 15 yd³ are 11.468 m³ and 0.5 yd³ 0.38228: 11.5 and 0.382 would be refused.
  CHECK(shown(Range{m3_from_yd3(0.5), m3_from_yd3(15.0)}, volume_quantity.units[1]) ==
        "0.383 to 11.4 m³");
  CHECK(shown(Range{-1000.0, 1000.0}, length_quantity.units[0]) == "-3280 to 3280 ft");
  // What conversions leave behind the last figure does not count.
  CHECK(shown(Range{m_from_in(2.0), m_from_in(24.0)}, thickness_quantity.units[0]) == "2 to 24 in");
  CHECK(shown(Range{celsius_from_fahrenheit(35.0), celsius_from_fahrenheit(110.0)},
              temperature_quantity.units[0]) == "35 to 110 °F");
}

}  // namespace slabtide::test
