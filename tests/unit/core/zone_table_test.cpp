#include "core/zone_table.h"

#include <string>

#include <doctest/doctest.h>

#include "unit/core/temporary_folder.h"

using namespace slabtide;

TEST_CASE("the zone of a place by the system's table") {
  // Places from general knowledge, well inside their zones; the table is from the tzdata package.
  CHECK(nearest_zone_name(41.9, -87.6) == "America/Chicago");
  CHECK(nearest_zone_name(39.7, -105.0) == "America/Denver");
  CHECK(nearest_zone_name(-33.9, 151.2) == "Australia/Sydney");
  CHECK(nearest_zone_name(-44.0, -176.5) == "Pacific/Chatham");
}

TEST_CASE("the nearest place counts along the sphere, across the date line as well") {
  const TemporaryFolder folder;
  folder.write("zone1970.tab",
               "# comment\n"
               "AA\t+0000+17900\tEast/Near\n"
               "BB\t+0000-16000\tWest/Far\n"
               "CC\t+404251-0740023\tNorth/Seconds\n"
               "DD\t+8000+00000\tNorth/Pole\n");
  CHECK(nearest_zone_name(0.0, -179.0, folder.path()) == "East/Near");
  CHECK(nearest_zone_name(40.0, -74.0, folder.path()) == "North/Seconds");
  CHECK(nearest_zone_name(85.0, 180.0, folder.path()) == "North/Pole");
}

TEST_CASE("lines that do not fit are passed over, and without a table there is no answer") {
  const TemporaryFolder folder;
  CHECK_FALSE(nearest_zone_name(0.0, 0.0, folder.path()));
  folder.write("zone1970.tab",
               "\nAA\nAA\t+0000\tNo/Longitude\nAA\t+00+000\tToo/Short\nAA\t+0x00+00000\tNo/Number\n"
               "BB\t+1000+01000\tGood/One\textra words\n");
  CHECK(nearest_zone_name(0.0, 0.0, folder.path()) == "Good/One");
}
