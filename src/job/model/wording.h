#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slabtide/job/model/job.h"

// Quantities in words, in the user's units.

namespace slabtide {

/// "8%", of a fraction.
std::string percent_words(double fraction);
std::string temperature_words(double c, UnitSystem units);             ///< "66 °F"
std::string temperature_difference_words(double k, UnitSystem units);  ///< "15 °F"
std::string thickness_words(double m, UnitSystem units);               ///< "4 in", "100 mm"
std::string length_words(double m, UnitSystem units);                  ///< "40 ft", "12.2 m"
std::string area_words(double m2, UnitSystem units);                   ///< "160 ft²"
std::string volume_words(double m3, UnitSystem units);                 ///< "2.1 yd³"
std::string sold_words(double m3, UnitSystem units);              ///< "2.25 yd³", of `sold_m3`
std::string wind_words(double m_s, UnitSystem units);             ///< "7 mph", "3.1 m/s"
std::string evaporation_words(double kg_m2_h, UnitSystem units);  ///< "0.14 lb/ft²/h"
std::string content_words(double kg_m3, UnitSystem units);        ///< "564 lb/yd³"
std::string strength_words(double psi, UnitSystem units);         ///< "4000 psi", "28 MPa"
/// "$1,240", "CAD 1,240", "$0.85": to the whole unit from ten on, else to hundredths;
/// the sign or code of the currency first. Never "-0".
std::string money_words(double money, const std::string& currency);
/// "pad", "pad and walk", "bay 1, bay 2, bay 3 and 9 more": of many names the first `max_named`.
std::string names_words(const std::vector<std::string>& names, std::size_t max_named = 3);
/// "35 min", "1 h 20 min", "5 h": a length of time to the nearest minute, without its sign.
std::string duration_words(double minutes);

}  // namespace slabtide
