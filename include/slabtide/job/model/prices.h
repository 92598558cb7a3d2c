#pragma once

#include <optional>
#include <string>

namespace slabtide {

/// What things cost the contractor, in the job's own currency. What is absent was not told: its
/// part of the cost is left out, and named as left out.
struct Prices {
  std::string currency;  ///< a sign or a code, as it is shown; empty: amounts stand alone
  std::optional<double> hand_per_h;         ///< an hour of one finisher
  std::optional<double> concrete_per_m3;    ///< as ordered
  std::optional<double> short_load;         ///< the plant's fee for each load under `short_load_m3`
  std::optional<double> retarder_per_l;     ///< or stabilizer
  std::optional<double> accelerator_per_l;  ///< without chloride
  std::optional<double> chloride_per_kg;
  std::optional<double> ice_per_kg;
  std::optional<double> hot_water_per_m3;      ///< of concrete made with it
  std::optional<double> chilled_water_per_m3;  ///< likewise
  std::optional<double> plastic_per_m2;        ///< of slab covered
  std::optional<double> blankets_per_m2;       ///< likewise
  std::optional<double> film_per_m2;           ///< of slab sprayed with evaporation film
  std::optional<double> redo_per_m2;           ///< of a finish that is lost
  std::optional<double> repair_per_m;          ///< of a crack where a cut comes too late
};

}  // namespace slabtide
