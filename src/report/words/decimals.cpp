#include "decimals.h"

#include <fmt/format.h>

#include "core/rounded.h"

namespace slabtide {

double tenths(double value) { return rounded(value, 1); }

double hundredths(double value) { return rounded(value, 2); }

double thousandths(double value) { return rounded(value, 3); }

std::string fixed_words(double value, int decimals) {
  return fmt::format("{:.{}f}", rounded(value, decimals), decimals);
}

}  // namespace slabtide
