// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_CONDUCTION_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_CONDUCTION_INL_H
#undef SLABTIDE_SLAB_CONDUCTION_INL_H
#else
#define SLABTIDE_SLAB_CONDUCTION_INL_H
#endif

#include "core/numbers-inl.h"
#include "slab/process/conduction.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// Idealises: constant properties; no moisture transport. Finite volumes with a massless
// surface node, half a cell above the first centre; in time SDIRK2 (Alexander 1977,
// Diagonally implicit Runge-Kutta methods for stiff O.D.E.'s, SIAM J. Numer. Anal. 14:
// two stages, gamma = 1 - 1/sqrt 2, L-stable, second order; published). Both stages share one
// factored matrix; eliminating from the bottom up leaves one equation for the surface, which
// takes a nonlinear law by Newton's method. The columns of a batch step the same way, side by
// side.

/// Columns to step, with work space; each row has one entry per cell.
template <class Number>
struct ConductionRows {
  std::size_t cells;
  Row<Number> capacity_j_m2k;
  Row<Number> conductance_w_m2k;  // one more than cells; the last is 0 for an insulated bottom
  Row<Number> cells_c;
  Row<Number> stage_c;     // after the first stage
  Row<Number> rate_w_m2k;  // capacity over (gamma step)
  Row<Number> inverse;     // of the diagonal after elimination
  Row<Number> from_above;  // coefficient of the neighbour above, after elimination
  Row<Number> from_below;  // coefficient of the eliminated right side of the neighbour below
  Row<Number> source_w_m2;
  Row<Number> eliminated_c;
  Number bottom_c;
};

/// The state of the surface after a step.
template <class Number>
struct SurfaceState {
  Number cover_m2k_w;
  Number surface_c;
  Number outer_c;
  Number inward_w_m2;
  Number rising_k_s;  // recent rate of the outer face: Newton's method starts from it
};

/// Heat into the column as a function of the surface temperature T: slope T - offset.
template <class Number>
struct ResponseOf {
  Number offset_w_m2;
  Number slope_w_m2k;
};

/// SurfaceFlux of the columns in the lanes.
template <class Number>
struct FluxOf {
  Number w_m2;
  Number slope_w_m2k;
};

template <class Mask, class Number>
FluxOf<Number> select(Mask which, const FluxOf<Number>& yes, const FluxOf<Number>& no) {
  return {select(which, yes.w_m2, no.w_m2), select(which, yes.slope_w_m2k, no.slope_w_m2k)};
}

template <class Number, class Flux>
struct StepOf {
  Number surface_j_m2;
  Number bottom_j_m2;
  Flux first;
  Flux second;
};

/// Factors the matrix that both stages share.
template <class Number>
void factor(const ConductionRows<Number>& rows, Number step_s) {
  Number below_from_above = 0.0;
  Number below = rows.conductance_w_m2k[rows.cells];
  for (std::size_t i = rows.cells; i-- > 0;) {
    const Number g = rows.conductance_w_m2k[i];
    const Number rate = rows.capacity_j_m2k[i] / (stage_gamma * step_s);
    const Number inverse = 1.0 / (rate + g + below - below * below_from_above);
    rows.rate_w_m2k.put(i, rate);
    rows.inverse.put(i, inverse);
    rows.from_below.put(i, below * inverse);
    below_from_above = g * inverse;
    rows.from_above.put(i, below_from_above);
    below = g;
  }
}

/// From the bottom up: each cell as eliminated + from_above times the node above it. The first
/// stage starts from the cells, the second from start + (1 - gamma) step dT/dt(first stage).
template <class Number>
ResponseOf<Number> eliminate(const ConductionRows<Number>& rows, Stage stage) {
  constexpr double weight = (1.0 - stage_gamma) / stage_gamma;
  Number below_c = rows.bottom_c;
  for (std::size_t i = rows.cells; i-- > 0;) {
    Number base_c = rows.cells_c[i];
    if (stage == Stage::second) base_c += weight * (rows.stage_c[i] - base_c);
    below_c = (rows.rate_w_m2k[i] * base_c + rows.source_w_m2[i]) * rows.inverse[i] +
              rows.from_below[i] * below_c;
    rows.eliminated_c.put(i, below_c);
  }
  const Number g = rows.conductance_w_m2k[0];
  return {g * below_c, g * (1.0 - rows.from_above[0])};
}

template <class Number>
void substitute(const ConductionRows<Number>& rows, Number above_c, const Row<Number>& into_c) {
  for (std::size_t i = 0; i < rows.cells; ++i) {
    above_c = rows.eliminated_c[i] + rows.from_above[i] * above_c;
    into_c.put(i, above_c);
  }
}

/// Newton's method on law(T) = (slope T - offset)/(1 + cover slope).
template <class Number, class Law>
auto balance(const Law& law, Stage stage, ResponseOf<Number> response,
             SurfaceState<Number>& surface) {
  constexpr int max_rounds = 30;
  // The slope of a law is accurate to 2 %, so after a change of this size a fiftieth of it remains.
  constexpr double close_enough_k = 1.0e-3;
  const Number covered = 1.0 / (1.0 + surface.cover_m2k_w * response.slope_w_m2k);
  const Number slope = response.slope_w_m2k * covered;
  const Number offset = response.offset_w_m2 * covered;
  Number outer_c = surface.outer_c;
  auto flux = law(outer_c, stage);
  auto moving = abs(outer_c) >= 0.0;  // all that are numbers
  for (int round = 0; round < max_rounds; ++round) {
    const Number change = (flux.w_m2 - (slope * outer_c - offset)) / (slope - flux.slope_w_m2k);
    outer_c = select(moving, outer_c + change, outer_c);
    moving = both(moving, abs(change) >= close_enough_k);
    if (!any(moving)) break;
    flux = select(moving, law(outer_c, stage), flux);
  }
  surface.outer_c = outer_c;
  surface.inward_w_m2 = slope * outer_c - offset;
  surface.surface_c = outer_c - surface.cover_m2k_w * surface.inward_w_m2;
  return flux;
}

template <class Number, class Law>
auto settle_surface(const ConductionRows<Number>& rows, const Law& law,
                    SurfaceState<Number>& surface) {
  const Number g = rows.conductance_w_m2k[0];
  return balance(law, Stage::second, ResponseOf<Number>{g * rows.cells_c[0], g}, surface);
}

/// One step; call `factor` first for its length.
template <class Number, class Law>
auto step_columns(const ConductionRows<Number>& rows, const Law& law, Number step_s,
                  SurfaceState<Number>& surface) {
  const std::size_t last = rows.cells - 1;
  const Number bottom_w_m2k = rows.conductance_w_m2k[rows.cells];
  const Number start_c = surface.outer_c;
  surface.outer_c += surface.rising_k_s * (stage_gamma * step_s);
  const auto first = balance(law, Stage::first, eliminate(rows, Stage::first), surface);
  const Number first_c = surface.outer_c;
  surface.outer_c += (first_c - start_c) * ((1.0 - stage_gamma) / stage_gamma);
  substitute(rows, surface.surface_c, rows.stage_c);
  Number surface_w_m2 = (1.0 - stage_gamma) * surface.inward_w_m2;
  Number bottom_w_m2 = (1.0 - stage_gamma) * bottom_w_m2k * (rows.bottom_c - rows.stage_c[last]);
  const auto second = balance(law, Stage::second, eliminate(rows, Stage::second), surface);
  substitute(rows, surface.surface_c, rows.cells_c);
  surface.rising_k_s = (surface.outer_c - first_c) / ((1.0 - stage_gamma) * step_s);
  surface_w_m2 += stage_gamma * surface.inward_w_m2;
  bottom_w_m2 += stage_gamma * bottom_w_m2k * (rows.bottom_c - rows.cells_c[last]);
  return StepOf<Number, decltype(law(step_s, Stage::first))>{surface_w_m2 * step_s,
                                                             bottom_w_m2 * step_s, first, second};
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
