#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace slabtide {

/// Of ASTM C150: I, II and I/II set alike here; III is early-strength.
enum class CementType { type_i_ii, type_iii };
/// Of fly ash, ASTM C618.
enum class AshClass { f, c };
/// The coarse aggregate's rock: expansion, hardness under the saw, shrinkage.
enum class Aggregate { unknown, limestone, granite, gravel, quartzite, sandstone, basalt };

/// What moves the set.
enum class AdmixtureKind {
  retarder,                  ///< ASTM C494 type B or D
  stabiliser,                ///< hydration stabiliser
  accelerator_chloride,      ///< calcium chloride
  accelerator_non_chloride,  ///< ASTM C494 type C or E without chloride
};

/// One admixture. Exactly one of dose and hours is set once read.
struct Admixture {
  AdmixtureKind kind = AdmixtureKind::retarder;
  /// mL per 100 kg of cementitious; for calcium chloride see `dose_percent`.
  std::optional<double> dose_ml_100kg;
  /// Calcium chloride, percent of cement by mass.
  std::optional<double> dose_percent;
  /// The supplier's own shift of initial set at 23 °C (73 °F); later is positive.
  std::optional<double> shift_h;

  friend bool operator==(const Admixture&, const Admixture&) = default;
};

/// What the discharge temperature follows from when it is not measured.
struct IngredientTemperatures {
  double cement_c = 0.0;
  double aggregate_c = 0.0;
  double water_c = 0.0;
  double aggregate_kg_m3 = 0.0;
  double aggregate_moisture_kg_m3 = 0.0;  ///< free water on the aggregate
  double ice_kg_m3 = 0.0;                 ///< part of the mix water
};

/// At discharge: measured, °C, or what it follows from.
using ConcreteTemperature = std::variant<double, IngredientTemperatures>;

/// What earlier pours of the mix have shown: its set times are longer by this factor.
struct LearnedSet {
  double set_factor = 1.0;
  int pours = 0;
  /// Standard deviation of what the factor itself may be off, in its logarithm.
  double log_deviation = 0.0;
};

/// What the plant delivers.
struct Mix {
  std::string name;
  double cementitious_kg_m3 = 307.0;  ///< cement, ash, slag and fume together
  double w_cm = 0.45;                 ///< water over cementitious
  CementType cement = CementType::type_i_ii;
  AshClass ash_class = AshClass::f;
  double ash_fraction = 0.0;          ///< of the cementitious, 0 to 1
  double slag_fraction = 0.0;         ///< 0 to 1
  double silica_fume_fraction = 0.0;  ///< 0 to 1
  double air_fraction = 0.02;         ///< 0 to 1
  double specified_strength_psi = 4000.0;
  /// How far the mean of the mix's cylinders lies over that; empty: a usual figure (strength.h).
  std::optional<double> strength_margin_psi;
  Aggregate aggregate = Aggregate::unknown;
  /// At discharge: °C, or the ingredients it follows from.
  ConcreteTemperature temperature = 18.0;
  /// ASTM C403 at 23 °C (73 °F), without admixture, when the supplier gives them; both or neither.
  std::optional<double> supplier_initial_set_h;
  std::optional<double> supplier_final_set_h;
  std::vector<Admixture> admixtures;
  /// From the mix book, where that knows the mix; no part of the job file.
  std::optional<LearnedSet> learned;
};

}  // namespace slabtide
