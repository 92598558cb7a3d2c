#include "admixture_shift.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string_view>

#include <fmt/format.h>

#include "core/rounded.h"
#include "slabtide/core/units.h"

namespace slabtide {
namespace {

// Hours at 73 °F per US fl oz/cwt, and the doses for which they hold: from memory.
constexpr double retarder_h_per_floz_cwt = 0.6;
constexpr double stabiliser_h_per_floz_cwt = 0.5;
struct DoseRange {
  double low_floz_cwt;
  double high_floz_cwt;
};
constexpr DoseRange retarder_useful{1.0, 4.0};
constexpr DoseRange stabiliser_useful{2.0, 8.0};

// Calcium chloride, percent of cement by mass: -1.2 h at 1 %, -2.0 h at 2 %, which is its limit.
// From memory.
constexpr double chloride_first_h = -1.2;
constexpr double chloride_second_h = -0.8;
constexpr double chloride_cap_percent = 2.0;
constexpr double non_chloride_floz_cwt_per_percent = 20.0;  // from memory

// Limits of ASTM C494/C494M on initial set relative to the reference: from memory.
constexpr double c494_min_h = 1.0;
constexpr double c494_max_h = 3.5;

constexpr double earliest_fraction_of_initial_set = -0.6;  // ours

std::string_view name_of(AdmixtureKind kind) {
  switch (kind) {
    case AdmixtureKind::retarder:
      return "set retarder";
    case AdmixtureKind::stabiliser:
      return "hydration stabilizer";
    case AdmixtureKind::accelerator_chloride:
      return "calcium chloride";
    case AdmixtureKind::accelerator_non_chloride:
      return "non-chloride accelerator";
  }
  throw std::invalid_argument("admixture: unknown kind");
}

double require_dose(const std::optional<double>& dose, const char* message) {
  if (!dose || !(*dose >= 0.0) || !std::isfinite(*dose)) throw std::invalid_argument(message);
  return *dose;
}

double dose_floz_cwt(const Admixture& admixture) {
  return floz_cwt_from_ml_100kg(
      require_dose(admixture.dose_ml_100kg, "admixture: neither a dose nor hours"));
}

/// The shift by calcium chloride, linear between the two doses above.
double chloride_shift_h(double percent) {
  const double counted = std::min(percent, chloride_cap_percent);
  return chloride_first_h * std::min(counted, 1.0) +
         chloride_second_h * std::max(0.0, counted - 1.0);
}

void note_over_cap(double percent, std::string_view dose, std::vector<std::string>& notes) {
  if (percent > chloride_cap_percent)
    notes.push_back(fmt::format("the dose is over {}; more than that is not counted", dose));
}

void note_useful(double dose, DoseRange useful, AdmixtureKind kind,
                 std::vector<std::string>& notes) {
  if (dose >= useful.low_floz_cwt && dose <= useful.high_floz_cwt) return;
  notes.push_back(fmt::format("{}: {:.1f} fl oz/cwt is outside the useful {:.0f} to {:.0f}",
                              name_of(kind), dose, useful.low_floz_cwt, useful.high_floz_cwt));
}

double shift_from_dose_h(const Admixture& admixture, std::vector<std::string>& notes) {
  switch (admixture.kind) {
    case AdmixtureKind::retarder: {
      const double dose = dose_floz_cwt(admixture);
      note_useful(dose, retarder_useful, admixture.kind, notes);
      return retarder_h_per_floz_cwt * dose;
    }
    case AdmixtureKind::stabiliser: {
      const double dose = dose_floz_cwt(admixture);
      note_useful(dose, stabiliser_useful, admixture.kind, notes);
      return stabiliser_h_per_floz_cwt * dose;
    }
    case AdmixtureKind::accelerator_chloride: {
      const double percent = require_dose(admixture.dose_percent,
                                          "calcium chloride: neither percent of cement nor hours");
      note_over_cap(percent, "2% of calcium chloride", notes);
      notes.emplace_back(
          "calcium chloride never goes with embedded aluminum or prestressing; with plain steel "
          "follow the code");
      return chloride_shift_h(percent);
    }
    case AdmixtureKind::accelerator_non_chloride: {
      const double percent = dose_floz_cwt(admixture) / non_chloride_floz_cwt_per_percent;
      note_over_cap(percent, "40 fl oz/cwt of non-chloride accelerator", notes);
      return chloride_shift_h(percent);
    }
  }
  throw std::invalid_argument("admixture: unknown kind");
}

/// Compares with the limits of ASTM C494 for types B, D, C and E; it has none for stabilisers.
void note_c494(AdmixtureKind kind, double hours, std::vector<std::string>& notes) {
  const double size = std::abs(hours);
  if (kind == AdmixtureKind::stabiliser || (size >= c494_min_h && size <= c494_max_h)) return;
  notes.push_back(
      fmt::format("{}: {:+.1f} h is outside the {:.1f} to {:.1f} h that ASTM C494 asks of its type",
                  name_of(kind), rounded(hours, 1), c494_min_h, c494_max_h));
}

double shift_h(const Admixture& admixture, std::vector<std::string>& notes) {
  if (admixture.shift_h && !std::isfinite(*admixture.shift_h))
    throw std::invalid_argument("admixture: hours are not finite");
  const double hours = admixture.shift_h ? *admixture.shift_h : shift_from_dose_h(admixture, notes);
  notes.push_back(fmt::format(
      "{}: {:+.1f} h on setting at 73 °F (23 °C), {}", name_of(admixture.kind), rounded(hours, 1),
      admixture.shift_h ? "the supplier's hours" : "estimated from its dose, from memory"));
  note_c494(admixture.kind, hours, notes);
  return hours;
}

}  // namespace

AdmixtureShift admixture_shift(const std::vector<Admixture>& admixtures, double initial_set_h) {
  AdmixtureShift shift;
  for (const Admixture& admixture : admixtures) shift.hours += shift_h(admixture, shift.notes);
  const double earliest = earliest_fraction_of_initial_set * initial_set_h;
  if (shift.hours < earliest) {
    shift.hours = earliest;
    shift.notes.push_back(
        fmt::format("admixtures together are counted as no more than {:+.1f} h", earliest));
  }
  return shift;
}

}  // namespace slabtide
