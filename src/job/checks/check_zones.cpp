#include "check_zones.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// As a fraction of the smaller zone: drawings that meet along a line overlap by a hair.
constexpr double overlap_allowed = 0.01;

bool apart(const Outline& a, const Outline& b, double Point::*axis) {
  const auto less = [axis](const Point& p, const Point& q) { return p.*axis < q.*axis; };
  const auto [a_low, a_high] = std::minmax_element(a.begin(), a.end(), less);
  const auto [b_low, b_high] = std::minmax_element(b.begin(), b.end(), less);
  return (*a_high).*axis < (*b_low).*axis || (*b_high).*axis < (*a_low).*axis;
}

/// The area the two zones share; 0 if it is small enough to be inaccurate drawing.
double overlap_m2(const Zone& a, const Zone& b) {
  if (a.outline.empty() || b.outline.empty()) return 0.0;
  if (apart(a.outline, b.outline, &Point::x_m) || apart(a.outline, b.outline, &Point::y_m)) {
    return 0.0;
  }
  const double shared = shared_area_m2(a.outline, b.outline);
  const double smaller = std::min(area_m2(a.outline), area_m2(b.outline));
  return shared > overlap_allowed * smaller ? shared : 0.0;
}

std::string area_text(double m2, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.3g} ft²", ft2_from_m2(m2))
                                 : fmt::format("{:.3g} m²", m2);
}

/// Limits on all zones together; the finding points at the shape of the last one.
std::optional<Diagnostic> sum_fault(const std::vector<Zone>& zones,
                                    const std::vector<ZonePlaces>& places, UnitSystem units) {
  double sum_m2 = 0.0;
  std::size_t corners = 0;
  std::size_t faces = 0;
  std::size_t joints = 0;
  for (const Zone& zone : zones) {
    if (!zone.outline.empty()) sum_m2 += area_m2(zone.outline);
    corners += zone.outline.size();
    faces += zone.faces.size();
    joints += zone.joints ? zone.joints->size() : 0;
  }
  if (sum_m2 <= largest_pour_m2 && corners <= max_corners && faces <= max_faces &&
      joints <= max_drawn_joints) {
    return std::nullopt;
  }
  Diagnostic fault{Severity::error, "zone", {}, places.back().shape, std::nullopt, {}};
  if (corners > max_corners) {
    fault.message =
        fmt::format("the zones have {} corners in all, expected at most {}", corners, max_corners);
    fault.next_step = "draw curves with fewer points";
  } else if (faces > max_faces) {
    fault.message =
        fmt::format("the zones have {} step faces in all, expected at most {}", faces, max_faces);
    fault.next_step = "let one face stand for a flight: its steps face the same way";
  } else if (joints > max_drawn_joints) {
    fault.message = fmt::format("the zones have {} joints drawn in all, expected at most {}",
                                joints, max_drawn_joints);
    fault.next_step =
        "draw a cut that goes straight on as one joint; plan each day's pour in a file of its own";
  } else {
    fault.message =
        fmt::format("the zones cover {} in all, expected at most {}",
                    whole_area_text(sum_m2, units), whole_area_text(largest_pour_m2, units));
    fault.next_step =
        "check the unit of the outlines; plan each day's pour in a job file of its own";
  }
  return fault;
}

}  // namespace

std::string whole_area_text(double m2, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.0f} ft²", ft2_from_m2(m2))
                                 : fmt::format("{:.0f} m²", m2);
}

std::vector<Diagnostic> check_zones(const std::vector<Zone>& zones,
                                    const std::vector<ZonePlaces>& places, UnitSystem units) {
  if (auto fault = sum_fault(zones, places, units)) return {std::move(*fault)};
  std::vector<Diagnostic> findings;
  const auto conflict = [&](std::size_t i, std::size_t j, SourcePosition ZonePlaces::*part,
                            std::string message, std::string next_step) {
    findings.push_back({Severity::error, fmt::format("zone[{}]", j + 1), std::move(message),
                        places[j].*part, places[i].*part, std::move(next_step)});
  };
  for (std::size_t j = 1; j < zones.size(); ++j) {
    for (std::size_t i = 0; i < j; ++i) {
      if (!zones[j].name.empty() && zones[i].name == zones[j].name) {
        conflict(i, j, &ZonePlaces::name,
                 fmt::format("a zone \"{}\" is already there", zones[j].name),
                 "give each zone a name of its own");
      }
      if (const double shared_m2 = overlap_m2(zones[i], zones[j]); shared_m2 > 0.0) {
        conflict(i, j, &ZonePlaces::shape,
                 fmt::format("overlaps the zone \"{}\" by {}", zones[i].name,
                             area_text(shared_m2, units)),
                 "zones may share a side, not an area");
      }
    }
  }
  return findings;
}

}  // namespace slabtide
