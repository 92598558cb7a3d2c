#include "slabtide/day/practice/uncertain_inputs.h"

#include <cstdint>

#include <boost/math/distributions/normal.hpp>
#include <boost/random/sobol.hpp>

#include "sobol_table.h"

namespace slabtide {

namespace {

/// The first points of a sequence in so many dimensions fill some pairs of them unevenly: of
/// these 100 no two inputs go together by more than 0.25, of the first 100 by 0.37 (ours).
constexpr std::uintmax_t skipped_points = 512;
constexpr double furthest_out = 2.5;  // ours: 1 in 80 is beyond

using Sobol = boost::random::sobol_engine<std::uint_least64_t, 64, SobolTable>;
static_assert(SobolTable::max_dimension == uncertain_input_count);

/// Worked out in doubles throughout, which any processor has; a long double is not the same on
/// each.
using NormalDistribution = boost::math::normal_distribution<
    double, boost::math::policies::policy<boost::math::policies::promote_double<false>>>;

/// The quantile function of the normal distribution truncated at `furthest_out` on both sides.
double cut_normal(double fraction) {
  const NormalDistribution normal;
  static const double below = boost::math::cdf(normal, -furthest_out);
  return boost::math::quantile(normal, below + fraction * (1.0 - 2.0 * below));
}

UncertainInputs mirrored(UncertainInputs uncertain_inputs) {
  for (double& z : uncertain_inputs.z) z = -z;
  return uncertain_inputs;
}

}  // namespace

std::string_view uncertain_input_words(UncertainInput unknown) {
  switch (unknown) {
    case UncertainInput::air:
      return "the forecast's air temperature";
    case UncertainInput::dew_point:
      return "the forecast's dew point";
    case UncertainInput::wind:
      return "the wind";
    case UncertainInput::cloud:
      return "the clouds";
    case UncertainInput::concrete:
      return "the concrete's temperature at the chute";
    case UncertainInput::convection:
      return "how much heat the air takes off";
    case UncertainInput::evaporation:
      return "how fast the top dries";
    case UncertainInput::absorptance:
      return "how much sun the surface takes up";
    case UncertainInput::set_time:
      return "the mix's set times";
    case UncertainInput::set_span:
      return "how fast the mix goes from initial to final set";
    case UncertainInput::activation_energy:
      return "what warmth does to the setting";
    case UncertainInput::admixture:
      return "what the admixtures do";
    case UncertainInput::bleed:
      return "how much the mix bleeds";
    case UncertainInput::delay:
      return "when the trucks come";
    case UncertainInput::pace:
      return "how fast the placing goes";
    case UncertainInput::night_air:
      return "how cold the night gets";
    case UncertainInput::wind_ratio:
      return "how sheltered the slab is";
    case UncertainInput::strength:
      return "how fast the mix gains strength";
    case UncertainInput::saw_strength:
      return "how strong the concrete must be for the saw";
    case UncertainInput::aggregate:
      return "the aggregate, which is not named";
    case UncertainInput::stress:
      return "how much stress the slab can bear";
    case UncertainInput::ready:
      return "how stiff the finishers want it";
    case UncertainInput::too_stiff:
      return "how stiff is too stiff";
    case UncertainInput::base:
      return "how warm the base is";
    case UncertainInput::bleed_time:
      return "how long the mix bleeds";
  }
  return "";
}

std::vector<UncertainInputs> even_uncertain_inputs(std::size_t count) {
  Sobol points(uncertain_input_count);
  points.discard(skipped_points * uncertain_input_count);
  const auto max = static_cast<double>(Sobol::max());
  std::vector<UncertainInputs> samples;
  samples.reserve(count + 1);
  while (samples.size() < count) {
    UncertainInputs drawn;
    // Shifted by half a step, so that 0 and 1 do not occur.
    for (double& z : drawn.z) z = cut_normal((static_cast<double>(points()) + 0.5) / (max + 1.0));
    samples.push_back(drawn);
    samples.push_back(mirrored(drawn));
  }
  samples.resize(count);
  return samples;
}

}  // namespace slabtide
