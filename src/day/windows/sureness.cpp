#include "slabtide/day/windows/sureness.h"

namespace slabtide {

namespace {

// Either way, ours.
constexpr double quite_min = 20.0;
constexpr double fairly_min = 45.0;
constexpr double roughly_min = 90.0;

}  // namespace

SureWord sure_word(const Sureness& sureness) {
  if (!sureness.either_way_min) return SureWord::hardly;
  if (*sureness.either_way_min <= quite_min) return SureWord::quite;
  if (*sureness.either_way_min <= fairly_min) return SureWord::fairly;
  return *sureness.either_way_min <= roughly_min ? SureWord::roughly : SureWord::hardly;
}

}  // namespace slabtide
