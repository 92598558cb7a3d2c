#pragma once

#include <cstddef>

#include "slabtide/core/units.h"

// What a job may contain: one set of limits for the reader of job files and for the library's own
// checks (validate.h). In the internal units.

namespace slabtide {

/// The values a number may take, both ends included.
struct Range {
  double low = 0.0;
  double high = 0.0;

  /// False for NaN.
  bool holds(double value) const { return value >= low && value <= high; }
};

namespace limits {

inline constexpr Range fractions{0.0, 1.0};  ///< of anything
/// The civil-time rules that are read, and the formula for the sun's position, hold for these
/// years.
inline constexpr Range years{2007.0, 2099.0};

// The site.
inline constexpr Range latitudes_deg{-90.0, 90.0};     ///< north positive
inline constexpr Range longitudes_deg{-180.0, 180.0};  ///< east positive
/// From the shore of the Dead Sea to the highest towns.
inline constexpr Range elevations_m{-430.0, 5100.0};
/// From ground that is just not frozen to desert soil in summer.
inline constexpr Range ground_c{celsius_from_fahrenheit(32.0), celsius_from_fahrenheit(120.0)};
/// Wind at the slab over the wind at 10 m: from still air behind walls to the speed-up on a
/// hilltop.
inline constexpr Range wind_ratios{0.05, 1.2};

// The pour.
inline constexpr Range transits_min{0.0, 240.0};         ///< batching to placing
inline constexpr Range hauls_m{0.0, m_from_ft(1000.0)};  ///< one way
/// From one or two workers to a conveyor belt.
inline constexpr Range placing_rates_m3_h{m3_from_yd3(0.5), m3_from_yd3(300.0)};
/// Number of workers that one pour can use.
inline constexpr Range crew_sizes{1.0, 60.0};
/// Up to four thick insulated blankets; plastic alone has no resistance to enter.
inline constexpr Range resistances_m2k_w{m2k_w_from_r_us(0.1), m2k_w_from_r_us(40.0)};

// The order, the crew and the changes to compare.
inline constexpr Range allowances{0.0, 0.3};              ///< as a fraction of the neat volume
inline constexpr Range low_bases_m{0.0, m_from_in(3.0)};  ///< how far below grade
/// From a trailer mixer to the largest truck.
inline constexpr Range loads_m3{m3_from_yd3(0.5), m3_from_yd3(15.0)};
inline constexpr Range short_loads_m3{0.0, m3_from_yd3(15.0)};  ///< the plant charges for smaller
                                                                ///< loads
inline constexpr Range discharge_limits_min{30.0, 480.0};       ///< batching to empty
inline constexpr Range spacings_min{1.0, 480.0};                ///< between arrivals
inline constexpr Range load_numbers{1.0, 500.0};                ///< loads count from 1
/// Of the usual rate of work: from one who learns to one who does the work of two.
inline constexpr Range paces{0.3, 2.0};
inline constexpr int max_hands = 60;  ///< told apart, of one crew
inline constexpr Range minutes_of_day{0.0, 1439.0};
inline constexpr Range arrivals_min{0.0, 480.0};  ///< before the first work
/// Of anything, in any currency, by the hour, m3, m2, m, kg or liter.
inline constexpr Range prices{0.0, 1.0e9};
inline constexpr std::size_t max_currency_characters = 6;
inline constexpr Range start_shifts_min{-720.0, 720.0};  ///< either way

// The typed weather of a day.
/// Wider than any day on which concrete is placed; the plan warns of cold and heat later.
inline constexpr Range typed_air_c{celsius_from_fahrenheit(-40.0), celsius_from_fahrenheit(130.0)};
/// Up to a gale, in which nobody places concrete.
inline constexpr Range typed_winds_m_s{0.0, m_s_from_mph(55.0)};
/// Drier air than on any desert afternoon is taken for a mistake.
inline constexpr Range humidities{0.02, 1.0};

// The mix: what ready-mixed concrete for slabs can contain; values outside are taken for mistakes.
/// Cementitious material.
inline constexpr Range contents_kg_m3{kg_m3_from_lb_yd3(200.0), kg_m3_from_lb_yd3(1200.0)};
/// Fine and coarse aggregate together.
inline constexpr Range aggregates_kg_m3{kg_m3_from_lb_yd3(1500.0), kg_m3_from_lb_yd3(4500.0)};
inline constexpr Range moistures_kg_m3{0.0, kg_m3_from_lb_yd3(400.0)};  ///< and limit for ice
/// Sacks of 94 lb in a cubic yard, as contractors order.
inline constexpr Range sacks_yd3{3.0, 10.0};
inline constexpr Range slumps_m{m_from_in(1.0), m_from_in(9.0)};
inline constexpr Range w_cms{0.25, 0.8};           ///< water over cementitious
inline constexpr Range ash_fractions{0.0, 0.6};    ///< of the cementitious
inline constexpr Range slag_fractions{0.0, 0.8};   ///< of the cementitious
inline constexpr Range fume_fractions{0.0, 0.15};  ///< of the cementitious
inline constexpr Range air_fractions{0.0, 0.12};   ///< of the volume
/// Some Portland cement must remain: the set and heat models are for mixes that contain it.
inline constexpr double max_replaced = 0.9;
inline constexpr Range strengths_psi{1500.0, 12000.0};  ///< specified at 28 days
/// Mean strength minus specified strength: from the worst shortfall reported to more than any
/// plant's margin.
inline constexpr Range strength_margins_psi{-1000.0, 4000.0};
/// Temperature of the concrete at discharge.
inline constexpr Range discharges_c{celsius_from_fahrenheit(35.0), celsius_from_fahrenheit(110.0)};
/// The upper end is cement hot from the mill.
inline constexpr Range cements_c{celsius_from_fahrenheit(10.0), celsius_from_fahrenheit(200.0)};
/// Temperature of the aggregate.
inline constexpr Range ingredients_c{celsius_from_fahrenheit(33.0), celsius_from_fahrenheit(140.0)};
/// The upper end is water heated in winter.
inline constexpr Range waters_c{celsius_from_fahrenheit(33.0), celsius_from_fahrenheit(180.0)};
inline constexpr Range initial_sets_h{1.0, 24.0};  ///< the supplier's, at 23 °C
inline constexpr Range final_sets_h{1.5, 36.0};    ///< the supplier's, at 23 °C
/// Retarder: twice the largest useful dose of a stabiliser [from memory: 2 to 8 fl oz/cwt].
inline constexpr Range retarder_doses_ml_100kg{0.0, ml_100kg_from_floz_cwt(16.0)};
/// A non-chloride accelerator needs far larger doses (20 fl oz/cwt is about 1 % chloride).
inline constexpr Range accelerator_doses_ml_100kg{0.0, ml_100kg_from_floz_cwt(60.0)};
/// The limit by custom and code: 2 % of the cement.
inline constexpr Range chlorides_percent{0.0, 2.0};
inline constexpr Range later_h{0.0, 36.0};   ///< by a retarder or stabiliser
inline constexpr Range sooner_h{-6.0, 0.0};  ///< by an accelerator
/// What the mix book may contain about a mix.
inline constexpr Range learned_factors{0.4, 2.5};
inline constexpr Range learned_deviations{0.0, 3.0};  ///< of the factor's logarithm

// The zones and their surroundings.
inline constexpr std::size_t max_zones = 100;  ///< of one day
/// Nothing on a site plan lies further out.
inline constexpr Range plan_m{-1000.0, 1000.0};
/// From one end of a zone to the other, whatever its shape: a street of houses (our choice). The
/// grid that cuts the cells covers all of it.
inline constexpr double longest_m = m_from_ft(1000.0);
/// Nobody forms and pours less than this (our choice): it must be a mistake in the unit or the
/// number.
inline constexpr double min_pour_m2 = m2_from_ft2(1.0);
inline constexpr double min_width_m = m_from_in(2.0);
inline constexpr Range thicknesses_m{m_from_in(2.0), m_from_in(24.0)};     ///< of a slab
inline constexpr Range walkway_widths_m{m_from_ft(0.5), m_from_ft(60.0)};  ///< of a path
inline constexpr Range base_depths_m{0.0, m_from_in(36.0)};                ///< under the slab
inline constexpr Range border_widths_m{m_from_in(2.0), m_from_ft(10.0)};   ///< of a strip
inline constexpr Range face_lengths_m{m_from_ft(0.5), m_from_ft(500.0)};   ///< along a form
inline constexpr Range face_heights_m{m_from_in(1.0), m_from_in(48.0)};    ///< of a step or an edge
/// By the labels of release agents, surface retarders and sealers.
inline constexpr Range wash_off_waits_h{0.5, 72.0};
inline constexpr Range wash_waits_h{0.0, 240.0};
inline constexpr Range seal_waits_days{0.0, 365.0};
inline constexpr Range treads_m{m_from_in(2.0), m_from_in(120.0)};   ///< behind a face
inline constexpr Range extra_volumes_m3{0.0, 100.0};                 ///< footings and haunches
inline constexpr Range absorptances{0.1, 1.0};                       ///< measured
inline constexpr Range heights_m{m_from_ft(0.5), m_from_ft(500.0)};  ///< of walls and trees
inline constexpr Range radii_m{m_from_ft(0.5), m_from_ft(80.0)};     ///< of trees

}  // namespace limits
}  // namespace slabtide
