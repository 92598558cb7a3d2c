#include <doctest/doctest.h>

#include "core/text.h"
#include "core/zone_at.h"
#include "published/weather/reference_rows.h"

using namespace slabtide;
using slabtide::testing::reference_rows;

namespace published_zone_reference {

// Compared with the npm package that the table was made of, @photostructure/tz-lookup, place by
// place: what is read out of the table, not how true the table is.
TEST_CASE("the zone of a place is that of the package the table comes from") {
  const auto rows = reference_rows("time_zones");
  REQUIRE_MESSAGE(rows.size() >= 50'000, "run npm ci in tests/npm");
  int others = 0;
  for (const auto& row : rows) {
    // North of all the table has cells for; the package has a rule of its own there.
    if (row[0] == "90") continue;
    others += zone_name_at(*parse_number(row[0]), *parse_number(row[1])) != row[2] ? 1 : 0;
  }
  CHECK(others == 0);
}

}  // namespace published_zone_reference
