#include "published/published_row.h"

#include <algorithm>
#include <cmath>
#include <fstream>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/does_not_meet.h"
#include "published/seen_row.h"

namespace slabtide::test {

namespace {

/// The file is rewritten by each run of the test's program.
void write_down(const SeenRow& row) {
  static std::ofstream file(SLABTIDE_SEEN_ROWS);
  file << line_of(row) << std::flush;
  REQUIRE_MESSAGE(file, "cannot write ", SLABTIDE_SEEN_ROWS);
}

void check(const Published& table, SeenRow row) {
  row.what = table.what;
  row.source = table.source;
  row.status = table.status;
  row.unit = table.unit;
  row.tolerance = table.tolerance;
  row.because = table.because;
  const std::string said =
      fmt::format("{}, {}: {} {} in {} ({}), apart {:+.3g}, allowed {:g}", table.what, row.row,
                  row.figure, table.unit, table.source, table.status, row.apart, table.tolerance);
  MESSAGE(said);
  write_down(row);
  const std::string fault = unannounced(row, does_not_meet());
  CHECK_MESSAGE(fault.empty(), said, ": ", fault);
}

SeenRow row_named(const std::string& name) {
  SeenRow row;
  row.row = name;
  return row;
}

std::string range_words(double min, double max) {
  if (min == max) return fmt::format("{:g}", min);
  if (std::isinf(max)) return fmt::format("at least {:g}", min);
  if (std::isinf(min)) return fmt::format("at most {:g}", max);
  return fmt::format("{:g} to {:g}", min, max);
}

}  // namespace

void check_row(const Published& table, const std::string& row, double figure, double computed) {
  SeenRow seen = row_named(row);
  seen.figure = fmt::format("{:.8g}", figure);
  seen.seen = computed;
  seen.apart = computed - figure;
  check(table, seen);
}

void check_range(const Published& table, const std::string& row, double min, double max,
                 double computed) {
  SeenRow seen = row_named(row);
  seen.figure = range_words(min, max);
  seen.seen = computed;
  seen.apart = computed - std::clamp(computed, min, max);
  check(table, seen);
}

void check_worst(const Published& table, const std::string& row, const std::string& against,
                 double worst) {
  SeenRow seen = row_named(row);
  seen.figure = against;
  seen.apart = worst;
  check(table, seen);
}

}  // namespace slabtide::test
