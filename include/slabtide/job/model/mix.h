#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace slabtide {

/// ASTM C150 types: I, II and I/II are taken to set alike; III is high early strength.
enum class CementType { type_i_ii, type_iii };
/// Classes of fly ash, ASTM C618.
enum class AshClass { f, c };
/// The rock of the coarse aggregate; affects expansion, sawing and shrinkage.
enum class Aggregate { unknown, limestone, granite, gravel, quartzite, sandstone, basalt };

/// Admixtures that shift the set.
enum class AdmixtureKind {
  retarder,                  ///< ASTM C494 type B or D
  stabiliser,                ///< hydration stabiliser
  accelerator_chloride,      ///< calcium chloride
  accelerator_non_chloride,  ///< ASTM C494 type C or E without chloride
};

/// One admixture. Once read, exactly one of the dose and the shift is set.
struct Admixture {
  AdmixtureKind kind = AdmixtureKind::retarder;
  /// mL per 100 kg of cementitious material; calcium chloride uses `dose_percent`.
  std::optional<double> dose_ml_100kg;
  /// Calcium chloride, percent of the cement by mass.
  std::optional<double> dose_percent;
  /// The supplier's stated shift of initial set at 23 °C (73 °F); positive is later.
  std::optional<double> shift_h;

  friend bool operator==(const Admixture&, const Admixture&) = default;
};

/// What the discharge temperature is computed from if it was not measured.
struct IngredientTemperatures {
  double cement_c = 0.0;
  double aggregate_c = 0.0;
  double water_c = 0.0;
  double aggregate_kg_m3 = 0.0;
  double aggregate_moisture_kg_m3 = 0.0;  ///< free water on the aggregate
  double ice_kg_m3 = 0.0;                 ///< part of the mix water
};

/// Temperature at discharge: measured, °C, or computed from the ingredients.
using ConcreteTemperature = std::variant<double, IngredientTemperatures>;

/// What earlier pours of the mix have shown: a factor on its set times.
struct LearnedSet {
  double set_factor = 1.0;
  int pours = 0;
  /// Standard deviation of the error of the factor itself, in its logarithm.
  double log_deviation = 0.0;
};

/// Where a mix's water over cementitious comes from, if nobody told it: from its slump or its
/// strength.
enum class WaterSource { told, slump, strength };

/// What the plant delivers.
struct Mix {
  std::string name;
  double cementitious_kg_m3 = 307.0;  ///< cement, ash, slag and fume together
  double w_cm = 0.45;                 ///< water over cementitious
  WaterSource water_source = WaterSource::told;
  std::optional<double> slump_m;  ///< as ordered
  CementType cement = CementType::type_i_ii;
  AshClass ash_class = AshClass::f;
  double ash_fraction = 0.0;          ///< of the cementitious, 0 to 1
  double slag_fraction = 0.0;         ///< 0 to 1
  double silica_fume_fraction = 0.0;  ///< 0 to 1
  double air_fraction = 0.06;         ///< 0 to 1; as concrete outdoors has
  double specified_strength_psi = 4000.0;
  /// How far the mean of the mix's cylinders exceeds the specified strength; if empty, a usual
  /// margin (strength.h).
  std::optional<double> strength_margin_psi;
  Aggregate aggregate = Aggregate::unknown;
  /// At discharge: °C, or the ingredients to compute it from.
  ConcreteTemperature temperature = 18.0;
  bool temperature_is_assumed = false;  ///< nobody told it: it follows the day's air
  /// The supplier's ASTM C403 set times at 23 °C (73 °F) without admixtures; both or neither.
  std::optional<double> supplier_initial_set_h;
  std::optional<double> supplier_final_set_h;
  std::vector<Admixture> admixtures;
  /// From the mix book, if it has this mix; not part of the job file.
  std::optional<LearnedSet> learned;
};

}  // namespace slabtide
