#include "absorptance.h"

#include <algorithm>

namespace slabtide {

double dry_absorptance(double wet_absorptance) {
  // Levinson & Akbari 2001: the mean dry albedo less what hydration adds, the same when wet, and
  // the highest albedo.
  constexpr double fresh_dry_albedo = 0.59 - 0.08;
  constexpr double fresh_wet_albedo = fresh_dry_albedo - 0.23;
  constexpr double highest_albedo = 0.77;
  const double wet_albedo = 1.0 - wet_absorptance;
  const double dry_albedo =
      std::min(wet_albedo * fresh_dry_albedo / fresh_wet_albedo, highest_albedo);
  return 1.0 - std::max(dry_albedo, wet_albedo);
}

}  // namespace slabtide
