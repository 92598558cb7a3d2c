// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_CONDUCTION_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_CONDUCTION_INL_H
#undef SLABTIDE_SLAB_CONDUCTION_INL_H
#else
#define SLABTIDE_SLAB_CONDUCTION_INL_H
#endif

#include "core/numbers-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// The modes of conduction.h in time. Over a step the heat through the surface runs straight from
// what it was to what it will be, and the sources are steady; under these each amplitude is taken
// exactly, however fast its mode fades (exponential integrator of second order: Hochbruck &
// Ostermann 2010, Exponential integrators, Acta Numerica 19; published). One nonlinear law is left
// to balance, that of the surface at the step's end. The columns of a batch step side by side.

/// What is left after a step of something that fades by x in it (kept), of what came evenly over
/// the step (mean), and of what came ever faster from nothing at first, its last rate being 1
/// (late): exp(-x), its integral from 0 to 1, and its integral weighted with what came. x from 0.
template <class Number>
struct FadingOf {
  Number kept;
  Number mean;
  Number late;
};

template <class Number>
FadingOf<Number> fading(Number x) {
  // Below, differences of nearly equal numbers lose their digits; above, products do.
  constexpr double small = 0.5;
  const Number some = max(x, Number(small));
  const Number kept = exp(-some);
  const Number mean = (1.0 - kept) / some;
  const Number late = (1.0 - mean) / some;
  const Number little = min(x, Number(small));
  Number series = 1.0;  // sum of (-x)^k 2!/(k+2)!, from its end
  for (int k = 11; k > 2; --k) series = 1.0 - little * (1.0 / k) * series;
  const Number little_late = 0.5 * series;
  const Number little_mean = 1.0 - little * little_late;
  const auto is_large = x > small;
  return {select(is_large, kept, 1.0 - little * little_mean), select(is_large, mean, little_mean),
          select(is_large, late, little_late)};
}

/// The modes of the columns in the lanes: rows with one entry per mode.
template <class Number>
struct ModeRows {
  std::size_t modes;
  Number rest_c;  // T_0
  Row<Number> decay_per_s;
  Row<Number> at_surface;
  Row<Number> amplitude;
  Row<Number> source;  // per second
  // Of steps of the present length: what is left of an amplitude; what 1 W/m2 through the surface
  // at the step's start and at its end adds to it; what a source of 1 adds.
  Row<Number> kept;
  Row<Number> from_start;
  Row<Number> from_end;
  Row<Number> from_source;
};

/// The state of the surface after a step.
template <class Number>
struct SurfaceState {
  Number cover_m2k_w;
  Number surface_c;
  Number outer_c;
  Number inward_w_m2;
  Number rising_w_m2_s;  // of the heat inward, lately: Newton's method starts from it
};

/// Makes ready for steps of this length. Returns by how much 1 W/m2 through the surface at a step's
/// end has warmed it by then, m2K/W.
template <class Number>
Number prepare_steps(const ModeRows<Number>& rows, Number step_s) {
  Number response_m2k_w = 0.0;
  for (std::size_t m = 0; m < rows.modes; ++m) {
    const FadingOf<Number> left = fading(Number(rows.decay_per_s[m] * step_s));
    const Number late_s = step_s * left.late;
    const Number from_end = rows.at_surface[m] * late_s;
    rows.kept.put(m, left.kept);
    rows.from_start.put(m, rows.at_surface[m] * (step_s * left.mean - late_s));
    rows.from_end.put(m, from_end);
    rows.from_source.put(m, step_s * left.mean);
    response_m2k_w += rows.at_surface[m] * from_end;
  }
  return response_m2k_w;
}

/// Newton's method for an outer face that is warmer than `known_c` by the resistance times the heat
/// that law(its temperature) sends in.
template <class Number, class Law>
auto balance(const Law& law, Number known_c, Number resistance_m2k_w, Number expected_w_m2,
             SurfaceState<Number>& surface) {
  constexpr int max_rounds = 30;
  // The last change is made by the law's slope, accurate to 2 %, without asking the law again.
  constexpr double close_enough_k = 5.0e-3;
  const auto change_k = [&](Number outer_c, const auto& flux) HWY_ATTR {
    return (known_c + resistance_m2k_w * flux.w_m2 - outer_c) /
           (1.0 - resistance_m2k_w * flux.slope_w_m2k);
  };
  Number outer_c = known_c + resistance_m2k_w * expected_w_m2;
  auto flux = law(outer_c);
  Number change = change_k(outer_c, flux);
  auto moving = abs(change) >= close_enough_k;
  for (int round = 1; round < max_rounds && any(moving); ++round) {
    outer_c = select(moving, outer_c + change, outer_c);
    flux = select(moving, law(outer_c), flux);
    change = select(moving, change_k(outer_c, flux), change);
    moving = both(moving, abs(change) >= close_enough_k);
  }
  surface.outer_c = outer_c + change;
  surface.inward_w_m2 = flux.w_m2 + flux.slope_w_m2k * change;
  surface.surface_c = surface.outer_c - surface.cover_m2k_w * surface.inward_w_m2;
  return flux;
}

/// One step, after `prepare_steps` for its length; `law` is that at its end. Returns the law's
/// value there.
template <class Number, class Law>
auto step_columns(const ModeRows<Number>& rows, const Law& law, Number step_s,
                  Number response_m2k_w, SurfaceState<Number>& surface) {
  const Number before_w_m2 = surface.inward_w_m2;
  Number known_c = rows.rest_c;  // the surface, if no heat came through it in the end
  for (std::size_t m = 0; m < rows.modes; ++m) {
    const Number carried = rows.kept[m] * rows.amplitude[m] + rows.from_start[m] * before_w_m2 +
                           rows.from_source[m] * rows.source[m];
    rows.amplitude.put(m, carried);
    known_c += rows.at_surface[m] * carried;
  }
  const auto flux = balance(law, known_c, Number(response_m2k_w + surface.cover_m2k_w),
                            Number(before_w_m2 + surface.rising_w_m2_s * step_s), surface);
  for (std::size_t m = 0; m < rows.modes; ++m) {
    rows.amplitude.put(m, rows.amplitude[m] + rows.from_end[m] * surface.inward_w_m2);
  }
  surface.rising_w_m2_s = (surface.inward_w_m2 - before_w_m2) / step_s;
  return flux;
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
