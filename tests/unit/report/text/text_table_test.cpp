#include "report/text/text_table.h"

#include <stdexcept>

#include <doctest/doctest.h>

namespace slabtide {

TEST_CASE("columns are as wide as their cells, numbers end at one place") {
  CHECK(text_table({{"what", false, 0}, {"min", true, 0}}, {{"pad", "5"}, {"landing", "120"}},
                   80) == "  what     min\n  pad        5\n  landing  120\n");
}

TEST_CASE("what does not fit is left out in the order told, and then cut") {
  const std::vector<TextColumn> columns{{"zone", false, 0}, {"why", false, 2}, {"long", true, 1}};
  const std::vector<std::vector<std::string>> rows{{"landing", "mid-run", "14 ft"}};
  CHECK(text_table(columns, rows, 25) == "  zone     why       long\n  landing  mid-run  14 ft\n");
  CHECK(text_table(columns, rows, 24) == "  zone      long\n  landing  14 ft\n");
  CHECK(text_table(columns, rows, 15) == "  zone\n  landing\n");
  CHECK(text_table(columns, rows, 6) == "  zone\n  la…g\n");
  CHECK_THROWS_AS(text_table(columns, {{"landing"}}, 80), std::invalid_argument);
}

TEST_CASE("a legend is of the columns that are shown") {
  const std::vector<TextColumn> columns{
      {"zone", false, 0}, {"why", false, 2, "its reason"}, {"long", true, 1, "the cut"}};
  const std::vector<std::vector<std::string>> rows{{"landing", "mid-run", "14 ft"}};
  CHECK(fitted_table(columns, rows, 25).legend == "why: its reason. long: the cut.");
  const FittedTable narrow = fitted_table(columns, rows, 24);
  CHECK(narrow.legend == "long: the cut.");
  CHECK(narrow.rows == std::vector<std::vector<std::string>>{{"landing", "14 ft"}});
  CHECK(fitted_table(columns, rows, 15).legend.empty());
}

}  // namespace slabtide
