#include "job/toml/quantity_words.h"

#include <doctest/doctest.h>

#include <string>

namespace slabtide {

namespace {

std::string read(std::string_view text, const Quantity& kind, UnitSystem system = UnitSystem::us) {
  const auto said = parse_quantity(text, kind, system);
  if (!said) return "nothing";
  return shown(said->value, said->unit == nullptr ? kind.usual(system) : *said->unit);
}

}  // namespace

// The forms are those people write on drawings and orders: common practice, no source.
TEST_CASE("lengths are read as people write them") {
  for (const char* text : {"4'6\"", "4' 6\"", "4'-6\"", "4 ft 6 in", "4 ft. 6 in.", "4' 6", "4′6″",
                           "4’6”", "4.5 ft", "4.5'", "4 1/2 ft", "4-1/2'", "4½ feet", "4.5"}) {
    INFO(text);
    CHECK(read(text, length_quantity) == "4.5 ft");
  }
  CHECK(read("3-1/2\"", thickness_quantity) == "3.5 in");
  CHECK(read("1/2 in", thickness_quantity) == "0.5 in");
  CHECK(read("½", thickness_quantity) == "0.5 in");
  CHECK(read("5' 3-1/2\"", length_quantity) == "5.29166666666667 ft");
  CHECK(read("100 mm", thickness_quantity) == "100 mm");
}

TEST_CASE("other quantities name their units") {
  CHECK(read("66 °F", temperature_quantity) == "66 °F");
  CHECK(read("66°", temperature_quantity) == "66 °F");
  CHECK(read("-4 C", temperature_quantity) == "-4 °C");
  for (const char* text : {"80 degrees", "80 deg", "80 deg.", "80 F", "80 deg F", "80 degrees F",
                           "80 Degrees Fahrenheit", "80 °F", "80", "80-degree"}) {
    INFO(text);
    CHECK(read(text, temperature_quantity) == "80 °F");
  }
  CHECK(read("27 degrees", temperature_quantity, UnitSystem::si) == "27 °C");
  CHECK(read("80 degrees", length_quantity) == "nothing");
  for (const char* text : {"4-inch", "four inches", "4-in", "Four-inch"}) {
    INFO(text);
    CHECK(read(text, thickness_quantity) == "4 in");
  }
  CHECK(read("6%", fraction_quantity) == "6%");
  CHECK(read("7 mph", wind_quantity) == "7 mph");
  CHECK(read("10 yards", volume_quantity) == "10 yd³");
  CHECK(read("2 oz/cwt", dose_quantity) == "2 fl oz/cwt");
  CHECK(read("100 mL/100 kg", dose_quantity) == "100 mL/100 kg");
  CHECK(read("1 h 30 min", minutes_quantity) == "1.5 h");
  CHECK(read("1,200 ft", length_quantity) == "1200 ft");
}

TEST_CASE("a count may name what it counts") {
  for (const char* text : {"6", "6-sack", "6 sack", "six sack", "6 sacks", "6-sack mix", "Six-Sack",
                           "six bags", "6 bag mix", "six"}) {
    INFO(text);
    CHECK(parse_count(text, "sacks", UnitSystem::us) == 6.0);
  }
  CHECK(parse_count("5 1/2 sack", "sacks", UnitSystem::us) == 5.5);
  CHECK(parse_count("7 days", "days", UnitSystem::us) == 7.0);
  for (const char* text : {"", "sack", "6 days", "6 sack of", "sixty", "6--sack", "-sack"}) {
    INFO(text);
    CHECK(!parse_count(text, "sacks", UnitSystem::us));
  }
}

TEST_CASE("what is no quantity of its kind is refused") {
  for (const char* text :
       {"", "ft", "4 gallons", "4 ft 13 in", "4 ft 6 m", "4 6 ft", "1,20", "12,00", "1,2000",
        "-4'6\"", "4'6\" 2", "1//2", "4 /2", "1/0", "..", "4 ft -"}) {
    INFO(text);
    CHECK(read(text, length_quantity) == "nothing");
  }
  CHECK(read("4 ft", temperature_quantity) == "nothing");
  // 1,200 is one and a bit where the comma is the decimal sign.
  CHECK(read("1,200", length_quantity, UnitSystem::si) == "nothing");
}

}  // namespace slabtide
