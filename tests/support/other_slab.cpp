#include "support/other_slab.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "slabtide/weather/air/moist_air.h"

namespace slabtide::test {

namespace {

constexpr double step_s = 10.0;
constexpr int steps_a_record = 12;
constexpr double cell_m = 0.005;
constexpr double ground_cell_m = 0.025;
constexpr double ground_until_m = 0.6;
constexpr double wave_depth_m = 0.15;
constexpr double zero_c_in_k = 273.15;
constexpr double psi_per_mpa = 145.037738;

struct OtherCells {
  std::vector<double> width_m;
  std::vector<double> conductivity;
  std::vector<double> capacity;  ///< J/m3 K
  std::vector<double> c;
  std::size_t slab = 0;
  double slab_cell_m = 0.0;

  explicit OtherCells(const OtherSlab& from) {
    slab = static_cast<std::size_t>(std::lround(from.thickness_m / cell_m));
    slab_cell_m = from.thickness_m / static_cast<double>(slab);
    for (std::size_t i = 0; i < slab; ++i) add(slab_cell_m, from.concrete, from.concrete_c);
    for (double depth_m = 0.5 * ground_cell_m; depth_m < ground_until_m; depth_m += ground_cell_m) {
      const double wave = std::exp(-depth_m / wave_depth_m);
      add(ground_cell_m, material_at(from, depth_m),
          from.ground_c + (from.base_top_c - from.ground_c) * wave);
    }
  }

  void conduct(double in_w_m2) {
    double into = in_w_m2;
    for (std::size_t i = 0; i + 1 < c.size(); ++i) {
      const double resistance =
          0.5 * (width_m[i] / conductivity[i] + width_m[i + 1] / conductivity[i + 1]);
      const double out = (c[i] - c[i + 1]) / resistance;
      c[i] += step_s * (into - out) / (capacity[i] * width_m[i]);
      into = out;
    }
  }

  double at(double depth_m) const {
    return c[std::min(slab - 1, static_cast<std::size_t>(depth_m / slab_cell_m))];
  }

 private:
  static ThermalMaterial material_at(const OtherSlab& from, double depth_m) {
    constexpr ThermalMaterial soil{.conductivity_w_mk = 1.2, .heat_capacity_j_m3k = 2.2e6};
    return !from.below.empty() && depth_m < from.below[0].thickness_m ? from.below[0].material
                                                                      : soil;
  }
  void add(double width, const ThermalMaterial& material, double at_c) {
    width_m.push_back(width);
    conductivity.push_back(material.conductivity_w_mk);
    capacity.push_back(material.heat_capacity_j_m3k);
    c.push_back(at_c);
  }
};

/// Water on top, and what the slab has given of its own.
struct OtherWater {
  double film_kg_m2 = 0.0;
  double given_kg_m2 = 0.0;

  /// All of free water's rate until 0.6 kg/m2 is gone, then less and less (ours).
  double wet_fraction() const {
    return film_kg_m2 > 0.0 ? 1.0 : std::min(1.0, std::exp((0.6 - given_kg_m2) / 0.5));
  }
  void pass(double bleed_kg_m2_h, double evaporation_kg_m2_h) {
    film_kg_m2 += (bleed_kg_m2_h - evaporation_kg_m2_h) * step_s / 3600.0;
    if (film_kg_m2 >= 0.0) return;
    given_kg_m2 -= film_kg_m2;
    film_kg_m2 = 0.0;
  }
};

struct OtherExchange {
  double in_w_m2 = 0.0;
  double evaporation_kg_m2_h = 0.0;
};

/// Natural convection 1.52 dT^(1/3) over a warm plate (ASHRAE), forced as EnergyPlus' TARP model
/// has it (Sparrow, Ramsey & Mass 1979): 2.537 R_f sqrt(P V / A), R_f 1.52, a slab of 3 by 4.5 m.
double other_film_w_m2k(double warmer_k, double wind_m_s) {
  constexpr double perimeter_over_area = 1.11;
  const double natural = (warmer_k > 0.0 ? 1.52 : 0.76) * std::cbrt(std::abs(warmer_k));
  return natural + 2.537 * 1.52 * std::sqrt(perimeter_over_area * wind_m_s);
}

/// A clear sky by Brutsaert 1975, cloud as 0.84 N^2 of what is left (both from memory).
double other_sky_emissivity(double air_c, double vapour_pa, double cloud) {
  const double clear = 1.24 * std::pow(vapour_pa / 100.0 / (air_c + zero_c_in_k), 1.0 / 7.0);
  return clear + 0.84 * cloud * cloud * (1.0 - clear);
}

/// Drying by the heat's own film: Lewis, Le^(2/3) 0.90.
OtherExchange other_exchange(const OtherSlab& slab, const SiteWeather& weather,
                             const CellExposure& exposure, const OtherWater& water, double time_s,
                             double surface_c) {
  const std::size_t i = weather.grid.index_at(time_s);
  const double film = other_film_w_m2k(surface_c - weather.air_c[i], weather.wind_slab_m_s[i]);
  const double drive_pa = saturation_pressure_pa(surface_c) - weather.vapour_pressure_pa[i];
  const double vapour_kg_m3 = drive_pa / (461.5 * (surface_c + zero_c_in_k));
  const double kg_m2_s = std::max(
      0.0, slab.drying_factor * water.wet_fraction() * film * vapour_kg_m3 / (1.2 * 1006.0 * 0.90));
  const double wet = water.wet_fraction();
  const double absorbed = (wet * slab.wet_absorptance + (1.0 - wet) * slab.dry_absorptance) *
                          exposure.shortwave_w_m2[i];
  constexpr double sigma = 5.67e-8;
  const double sky = other_sky_emissivity(weather.air_c[i], weather.vapour_pressure_pa[i],
                                          weather.cloud_fraction[i]);
  const double from_above = exposure.sky_view * sky + 1.0 - exposure.sky_view;
  const double longwave = 0.95 * sigma *
                          (from_above * std::pow(weather.air_c[i] + zero_c_in_k, 4) -
                           std::pow(surface_c + zero_c_in_k, 4));
  return {absorbed + longwave - film * (surface_c - weather.air_c[i]) - 2.45e6 * kg_m2_s,
          3600.0 * kg_m2_s};
}

/// Freiesleben Hansen & Pedersen (from memory): 1.47 kJ/mol more for each K under 20 °C.
double other_rate(const OtherSlab& slab, double c) {
  const double colder_k = slab.steeper_in_cold ? std::max(0.0, 20.0 - c) : 0.0;
  const double energy = slab.energy_j_mol + 1470.0 * colder_k;
  return std::exp(energy / 8.314 * (1.0 / 295.93 - 1.0 / (c + zero_c_in_k)));
}

double other_resistance_psi(const OtherSlab& slab, double age_h) {
  const double risen = (age_h - slab.dead_h) / (slab.initial_set_h - slab.dead_h);
  if (!(risen > 0.0)) return 0.0;
  const double span = (slab.final_set_h - slab.dead_h) / (slab.initial_set_h - slab.dead_h);
  return std::min(20000.0, 500.0 * std::pow(risen, std::log(8.0) / std::log(span)));
}

/// S = S_28 exp(c (28^-a - t^-a)), t days at the pace of setting: the form of Freiesleben Hansen &
/// Pedersen (from memory), through the strengths at final set, one day and 28.
class OtherStrength {
 public:
  explicit OtherStrength(const OtherSlab& slab)
      : strength_28_d_psi_(slab.strength_28_d_psi),
        day_h_(24.0 * slab.final_set_h / plain_final_set_h) {
    const double at_set = -std::log(slab.final_set_psi / slab.strength_28_d_psi);
    const double at_day = -std::log(slab.one_day_fraction);
    double low = 0.05;
    double high = 3.0;
    for (int i = 0; i < 40; ++i) {
      exponent_ = 0.5 * (low + high);
      const double ratio =
          fallen(slab.final_set_h / day_h_) / fallen(1.0);  // grows with the exponent
      (ratio < at_set / at_day ? low : high) = exponent_;
    }
    scale_ = at_day / fallen(1.0);
  }

  double psi(double age_h) const {
    return strength_28_d_psi_ * std::exp(-scale_ * fallen(std::max(age_h / day_h_, 1e-3)));
  }

 private:
  static constexpr double plain_final_set_h = 5.5;
  double fallen(double days) const {
    return std::pow(days, -exponent_) - std::pow(28.0, -exponent_);
  }

  double strength_28_d_psi_;
  double day_h_;
  double exponent_ = 1.0;
  double scale_ = 1.0;
};

/// Heat H/(1 + (t_h/t)^2.2).
double other_heat_j_m3(const OtherSlab& slab, double age_h) {
  return slab.heat_j_m3 / (1.0 + std::pow(slab.half_heat_h / std::max(age_h, 1e-3), 2.2));
}

class OtherRun {
 public:
  OtherRun(const OtherSlab& slab, const SiteWeather& weather, const CellExposure& exposure)
      : slab_(slab), weather_(weather), exposure_(exposure), cells_(slab), strength_(slab) {
    const double transit_h = (slab.placed_s - slab.batched_s) / 3600.0;
    work_h_ = middle_h_ = transit_h * other_rate(slab, slab.concrete_c);
    surface_c_ = slab.concrete_c;
  }

  ColumnHistory run() {
    ColumnHistory history;
    const double end_s = weather_.grid.end_s();
    int step = 0;
    for (double time_s = slab_.placed_s; time_s < end_s; time_s += step_s, ++step) {
      const OtherExchange top =
          other_exchange(slab_, weather_, exposure_, water_, time_s, surface_c_);
      surface_c_ = cells_.c[0] + top.in_w_m2 * 0.5 * cells_.slab_cell_m / cells_.conductivity[0];
      if (step % steps_a_record == 0) record(history, time_s, top);
      advance(time_s, top);
    }
    return history;
  }

 private:
  double middle_c() const { return cells_.at(0.5 * slab_.thickness_m); }
  /// Even for a while, then straight down to nothing: Powers 1968 (from memory). Over by initial
  /// set (FHWA-RD-02-099, published).
  double bleed_kg_m2_h(double time_s) const {
    const double lasts_h =
        2.0 * slab_.bleed_kg_m2 / ((1.0 + slab_.evenly_fraction) * slab_.first_bleed_kg_m2_h);
    const double left = 1.0 - (time_s - slab_.placed_s) / 3600.0 / lasts_h;
    if (middle_h_ >= slab_.initial_set_h) return 0.0;
    return slab_.first_bleed_kg_m2_h * std::clamp(left / (1.0 - slab_.evenly_fraction), 0.0, 1.0);
  }

  void advance(double time_s, const OtherExchange& top) {
    water_.pass(bleed_kg_m2_h(time_s), top.evaporation_kg_m2_h);
    cells_.conduct(top.in_w_m2);
    const double aged_h = other_rate(slab_, middle_c()) * step_s / 3600.0;
    const double heat =
        other_heat_j_m3(slab_, middle_h_ + aged_h) - other_heat_j_m3(slab_, middle_h_);
    for (std::size_t i = 0; i < cells_.slab; ++i) cells_.c[i] += heat / cells_.capacity[i];
    middle_h_ += aged_h;
    work_h_ += other_rate(slab_, cells_.at(0.020)) * step_s / 3600.0;
  }

  void record(ColumnHistory& h, double time_s, const OtherExchange& top) const {
    double mean = 0.0;
    double moment = 0.0;
    const auto n = static_cast<double>(cells_.slab);
    for (std::size_t i = 0; i < cells_.slab; ++i) {
      mean += cells_.c[i] / n;
      moment += cells_.c[i] / n * (0.5 - (static_cast<double>(i) + 0.5) / n);
    }
    h.time_s.push_back(time_s);
    h.surface_c.push_back(surface_c_);
    h.middle_c.push_back(middle_c());
    h.mean_c.push_back(mean);
    h.gradient_c.push_back(12.0 * moment);
    h.set_age_work_h.push_back(work_h_);
    h.set_age_middle_h.push_back(middle_h_);
    h.resistance_work_psi.push_back(other_resistance_psi(slab_, work_h_));
    h.resistance_middle_psi.push_back(other_resistance_psi(slab_, middle_h_));
    h.strength_psi.push_back(strength_.psi(work_h_));
    h.evaporation_kg_m2_h.push_back(top.evaporation_kg_m2_h);
    h.bleed_kg_m2_h.push_back(bleed_kg_m2_h(time_s));
    h.bleed_water_kg_m2.push_back(water_.film_kg_m2);
  }

  const OtherSlab& slab_;
  const SiteWeather& weather_;
  const CellExposure& exposure_;
  OtherCells cells_;
  OtherStrength strength_;
  OtherWater water_;
  double surface_c_ = 0.0;
  double work_h_ = 0.0;
  double middle_h_ = 0.0;
};

/// A stress of which a part lasts and the rest fades.
struct OtherFading {
  double lasts = 0.0;
  double fades = 0.0;

  void grow(double added, double lasting, double seconds) {
    fades = fades * std::exp(-seconds / (6.0 * 3600.0)) + (1.0 - lasting) * added;
    lasts += lasting * added;
  }
  double mpa() const { return lasts + fades; }
  void hold(double max_mpa) {
    const double kept = std::min(1.0, max_mpa / std::max(std::abs(mpa()), 1e-12));
    lasts *= kept;
    fades *= kept;
  }
};

}  // namespace

ColumnHistory other_history(const OtherSlab& slab, const SiteWeather& weather,
                            const CellExposure& exposure) {
  return OtherRun(slab, weather, exposure).run();
}

/// f_t = 0.30 f_c^(2/3) MPa (CEB-FIP Model Code 1990, from memory), E = 4730 sqrt f_c MPa (ACI
/// 318).
std::optional<double> other_half_strength_s(const ColumnHistory& h, const OtherStress& stress) {
  const double held_mpa = 2350.0 * 9.81 * stress.friction * 0.5 * stress.length_m / 1.0e6;
  OtherFading mean;
  OtherFading curl;
  for (std::size_t i = 1; i < h.time_s.size(); ++i) {
    if (h.set_age_middle_h[i] < stress.from_set_age_h) continue;
    const double fc_mpa = h.strength_psi[i] / psi_per_mpa;
    const double per_k =
        stress.modulus_factor * 4730.0 * std::sqrt(fc_mpa) * stress.expansion_per_k;
    const double seconds = h.time_s[i] - h.time_s[i - 1];
    mean.grow(per_k * (h.mean_c[i - 1] - h.mean_c[i]), stress.lasting, seconds);
    mean.hold(held_mpa);
    curl.grow(0.5 * per_k * (h.gradient_c[i - 1] - h.gradient_c[i]), stress.lasting, seconds);
    const double tension = mean.mpa() + std::abs(curl.mpa());
    if (tension >= 0.5 * 0.30 * std::pow(fc_mpa, 2.0 / 3.0)) return h.time_s[i];
  }
  return std::nullopt;
}

}  // namespace slabtide::test
