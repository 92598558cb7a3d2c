#pragma once

#include "slabtide/job/model/job.h"

namespace slabtide {

/// Wind at one height over the wind at another by the logarithmic profile.
///
/// Idealises: neutral air over even ground without displacement. Heights above ten times the
/// roughness at least.
/// Symbols: ln(z/z0) / ln(zr/z0), z0 roughness length.
/// Source: Stull 2017, Practical Meteorology, eq. 18.14; roughness classes of
/// Davenport-Wieringa. Status: published.
/// Error: std::invalid_argument unless 0 < roughness < both heights.
double log_law_ratio(double height_m, double reference_height_m, double roughness_m);

/// Wind 0.5 m above the slab over the forecast's 10 m wind: open lot 0.60, yard 0.45,
/// sheltered court 0.28. Status: ours.
double named_wind_ratio(WindSetting setting);

/// The site's measured ratio, else that of its named setting.
/// Error: std::invalid_argument for a measured ratio that is negative or not a number.
double wind_ratio(const Site& site);

}  // namespace slabtide
