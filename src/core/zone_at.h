#pragma once

#include <string>

namespace slabtide {

/// The IANA time zone of a place, by the boundaries in data/time_zones: right for nine inhabited
/// places in ten (the table's own figure), and off by a few miles along a border, so tell the user
/// which it is. At sea one of Etc/GMT. Throws std::invalid_argument beyond 90 degrees of latitude
/// or 180 of longitude.
std::string zone_name_at(double latitude_deg, double longitude_deg);

}  // namespace slabtide
