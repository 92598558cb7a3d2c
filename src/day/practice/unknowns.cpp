#include "slabtide/day/practice/unknowns.h"

#include <cstdint>

#include <boost/math/distributions/normal.hpp>
#include <boost/random/sobol.hpp>

namespace slabtide {

namespace {

constexpr double furthest_out = 2.5;  // ours: what lies beyond is 1 in 80

/// The quantile of the normal distribution cut off at `furthest_out` either side.
double cut_normal(double share) {
  const boost::math::normal_distribution<> normal;
  static const double below = boost::math::cdf(normal, -furthest_out);
  return boost::math::quantile(normal, below + share * (1.0 - 2.0 * below));
}

Unknowns mirrored(Unknowns unknowns) {
  for (double& z : unknowns.z) z = -z;
  return unknowns;
}

}  // namespace

std::string_view unknown_words(Unknown unknown) {
  switch (unknown) {
    case Unknown::air:
      return "the forecast's air temperature";
    case Unknown::dew_point:
      return "the forecast's dew point";
    case Unknown::wind:
      return "the wind";
    case Unknown::cloud:
      return "the clouds";
    case Unknown::concrete:
      return "the concrete's temperature at the chute";
    case Unknown::convection:
      return "what the air carries off";
    case Unknown::evaporation:
      return "how fast the top dries";
    case Unknown::absorptance:
      return "how much sun the surface takes up";
    case Unknown::set_time:
      return "the mix's set times";
    case Unknown::set_span:
      return "how fast the mix goes from initial to final set";
    case Unknown::set_energy:
      return "what warmth does to the setting";
    case Unknown::admixture:
      return "what the admixtures do";
    case Unknown::bleed:
      return "how much the mix bleeds";
    case Unknown::delay:
      return "when the trucks come";
    case Unknown::pace:
      return "how fast the placing goes";
  }
  return "";
}

std::vector<Unknowns> even_unknowns(std::size_t count) {
  boost::random::sobol points(unknown_count);
  const auto most = static_cast<double>(boost::random::sobol::max());
  std::vector<Unknowns> draws;
  draws.reserve(count + 1);
  while (draws.size() < count) {
    Unknowns drawn;
    // Half a step up, so that neither 0 nor 1 is met.
    for (double& z : drawn.z) z = cut_normal((static_cast<double>(points()) + 0.5) / (most + 1.0));
    draws.push_back(drawn);
    draws.push_back(mirrored(drawn));
  }
  draws.resize(count);
  return draws;
}

}  // namespace slabtide
