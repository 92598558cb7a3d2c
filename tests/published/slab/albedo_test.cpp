#include <doctest/doctest.h>

#include "published/published_row.h"
#include "slab/process/absorptance.h"
#include "slabtide/slab/column/column.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_albedo {

TEST_CASE("how much light grey concrete throws back, dry and wet") {
  constexpr const char* measured = "Levinson & Akbari 2001 (LBNL)";
  const double wet = 1.0 - ColumnCase{}.absorptance;
  const double dry = 1.0 - dry_absorptance(ColumnCase{}.absorptance);
  check_range({.what = "albedo of dry concrete", .source = measured, .because = given_as_range},
              "grey, fresh", 0.41, 0.77, dry);
  check_row(
      {.what = "albedo, before hydration lightens it", .source = measured, .tolerance = 0.005},
      "grey, fresh and dry", 0.59 - 0.08, dry);
  check_row({.what = "albedo, changed by wetting", .source = measured, .tolerance = 0.005},
            "grey, fresh", -0.23, wet - dry);
}

}  // namespace published_albedo
