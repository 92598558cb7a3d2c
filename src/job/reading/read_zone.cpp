#include "read_zone.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <variant>

#include <fmt/format.h>

#include "job/checks/check_zones.h"
#include "job/geometry/zone_geometry.h"
#include "job/model/limits.h"
#include "job/toml/job_words.h"
#include "job/toml/table_words.h"
#include "job/toml/toml_tree.h"
#include "read_admixture.h"
#include "slabtide/core/units.h"
#include "zone_names.h"

namespace slabtide {

namespace {

constexpr auto bases = std::to_array<Word<BaseKind>>({{"gravel", BaseKind::gravel},
                                                      {"soil", BaseKind::soil},
                                                      {"sand", BaseKind::sand},
                                                      {"insulation", BaseKind::insulation}});
constexpr auto keepings = std::to_array<Word<BaseKept>>({{"bare", BaseKept::bare},
                                                         {"shaded", BaseKept::shaded},
                                                         {"wet", BaseKept::wet},
                                                         {"covered", BaseKept::covered}});
constexpr auto colours = std::to_array<Word<Colour>>({{"grey", Colour::grey},
                                                      {"gray", Colour::grey},
                                                      {"white", Colour::white},
                                                      {"red", Colour::red_or_tan},
                                                      {"tan", Colour::red_or_tan},
                                                      {"brown", Colour::brown_or_charcoal},
                                                      {"charcoal", Colour::brown_or_charcoal}});

/// The system of the unit that a shape was written in, which need not be the file's.
UnitSystem units_of(const TableReader& table, std::string_view key) {
  const Unit* const unit = table.unit_of(key);
  if (unit == nullptr) return table.units();
  return unit->suffix == "ft" || unit->suffix == "in" ? UnitSystem::us : UnitSystem::si;
}

std::string length_text(double m, UnitSystem units) {
  if (units == UnitSystem::us) return fmt::format("{:.0f} ft", ft_from_m(m));
  return fmt::format("{:.0f} m", m);
}

/// To two significant figures, so that a tiny area is not shown as 0.
std::string fine_area_text(double m2, UnitSystem units) {
  if (units == UnitSystem::us) return fmt::format("{:.2g} ft²", ft2_from_m2(m2));
  return fmt::format("{:.2g} m²", m2);
}

std::string fine_width_text(double m, UnitSystem units) {
  if (units == UnitSystem::us) return fmt::format("{:.2g} in", in_from_m(m));
  return fmt::format("{:.2g} mm", mm_per_m * m);
}

bool enough_to_pour(TableReader& table, std::string_view key, const Outline& outline) {
  const UnitSystem units = units_of(table, key);
  const auto too_little = [&](const std::string& message) {
    table.error(key, message, "check its unit and its corners; nobody forms and pours that little");
    return false;
  };
  constexpr double rounding = 1e-9;
  if (const double width = mean_width_m(outline); width < limits::min_width_m * (1.0 - rounding)) {
    return too_little(fmt::format("is {} wide on average, expected at least {}",
                                  fine_width_text(width, units),
                                  fine_width_text(limits::min_width_m, units)));
  }
  if (const double area = area_m2(outline); area < limits::min_pour_m2 * (1.0 - rounding)) {
    return too_little(fmt::format("encloses {}, expected at least {}", fine_area_text(area, units),
                                  fine_area_text(limits::min_pour_m2, units)));
  }
  return true;
}

bool size_stands(TableReader& table, std::string_view key, const Outline& outline) {
  const UnitSystem units = units_of(table, key);
  const double reach = reach_m(outline);
  if (!(reach <= limits::longest_m)) {
    table.error(key,
                fmt::format("reaches over {}, expected at most {}", length_text(reach, units),
                            length_text(limits::longest_m, units)),
                "check its unit; divide what is that long into zones");
    return false;
  }
  const double area = area_m2(outline);
  if (area <= largest_pour_m2) return enough_to_pour(table, key, outline);
  table.error(key,
              fmt::format("encloses {}, expected at most {}", whole_area_text(area, units),
                          whole_area_text(largest_pour_m2, units)),
              "check its unit; divide what is placed as one into zones");
  return false;
}

bool outline_stands(TableReader& table, const Outline& outline) {
  if (const auto fault = outline_fault(outline)) {
    table.error("outline", *fault,
                "name the corners in order, once around, without the first again");
    return false;
  }
  return size_stands(table, "outline", outline);
}

bool has_repeat(const std::vector<Point>& line) {
  for (std::size_t i = 1; i < line.size(); ++i) {
    if (line[i] == line[i - 1]) return true;
  }
  return false;
}

bool walkway_stands(TableReader& table, const Walkway& path) {
  if (path.line.size() < 2) {
    table.error("path", fmt::format("got {}, expected two or more",
                                    path.line.empty() ? "no points" : "one point"));
    return false;
  }
  if (has_repeat(path.line)) {
    table.error("path", "names the same point twice in a row", "leave one of the two out");
    return false;
  }
  if (const double length = line_length_m(path); !(length <= limits::longest_m)) {
    table.error(
        "path",
        fmt::format("is {} long, expected at most {}", length_text(length, units_of(table, "path")),
                    length_text(limits::longest_m, units_of(table, "path"))),
        "check its unit; divide what is that long into zones");
    return false;
  }
  if (const auto fault = walkway_fault(path)) {
    table.error("path", *fault,
                "ease the bend, leave out points that lie close together, or draw an `outline`");
    return false;
  }
  const auto outline = outline_of_walkway(path);
  if (outline_fault(outline)) {
    table.error("path", "the walk runs into itself",
                "divide it into two zones where it comes back, or draw an `outline`");
    return false;
  }
  return size_stands(table, "path", outline);
}

void read_walkway(TableReader& table, Zone& zone) {
  auto line = table.points("path");
  const auto width = table.quantity("width", length_quantity, limits::walkway_widths_m);
  if (!table.has("path")) {
    if (table.has("width")) {
      table.error("width", "a width without the `path` it goes with",
                  "an `outline` needs no width");
    }
    return;
  }
  if (!table.has("width")) table.error("path", "needs the walk's `width`");
  if (!line || !width) return;
  Walkway path{std::move(*line), *width};
  if (!walkway_stands(table, path)) return;
  zone.outline = outline_of_walkway(path);
  zone.path = std::move(path);
}

/// Gives the outline as it is written, whichever way round; empty for a walk, or if it is faulty.
Outline read_shape(TableReader& table, Zone& zone) {
  const auto outline = table.points("outline");
  read_walkway(table, zone);
  if (table.refuse_both("outline", "path")) return {};
  if (!table.has("outline") && !table.has("path")) {
    table.error("", "the shape is missing", "draw an `outline`, or a `path` with its `width`");
    return {};
  }
  if (!outline || !outline_stands(table, *outline)) return {};
  zone.outline = counter_clockwise(*outline);
  return *outline;
}

/// The edge of that number, counted from 1 along the outline as it is written; reported if there is
/// none.
std::optional<Joint> read_edge(TableReader& table, const TomlValue& value, const Outline& written) {
  const auto* const number = std::get_if<double>(&value.held);
  const auto count = written.size();
  if (number == nullptr || *number != std::floor(*number) || *number < 1.0 ||
      *number > static_cast<double>(count)) {
    table.error_at(value.where, "tied_edges",
                   fmt::format("got {}, expected numbers from 1 to {}", shown(value), count),
                   "edge 1 runs from the first corner to the second, and so on around");
    return std::nullopt;
  }
  const auto i = static_cast<std::size_t>(*number);
  return Joint{written[i - 1], written[i % count]};
}

/// Whether the zone is tied, and by which edges; naming one says that it is.
void read_ties(TableReader& table, const Outline& written, Zone& zone) {
  const auto tied = table.yes_no("tied");
  set(zone.tied, tied);
  const TomlEntry* const edges = table.entry("tied_edges");
  if (edges == nullptr) return;
  if (table.has("path")) {
    table.error("tied_edges", "the edges of a walk have no numbers",
                "say `tied = true` alone, or draw an `outline`");
    return;
  }
  if (tied == false) {
    table.error("tied_edges", "names edges of a zone that is not tied", "leave out one of the two");
  }
  if (written.empty()) return;
  for (const TomlValue& value : as_list(edges->value)) {
    const auto edge = read_edge(table, value, written);
    if (!edge) return;
    zone.tied_edges.push_back(*edge);
  }
  zone.tied = zone.tied || !zone.tied_edges.empty();
}

void read_border(TableReader& table, Zone& zone) {
  table.in_table("border", [&](TableReader& strip) {
    Border border;
    const auto width =
        strip.quantity("width", length_quantity, limits::border_widths_m, Presence::required);
    set(border.width_m, width);
    set(border.finish, strip.word("finish", finishes, Presence::required));
    zone.border = border;
    if (!width || zone.outline.empty() || border_fits(zone.outline, *width)) return;
    strip.error("width", "the border leaves no field inside the zone",
                "narrow the border, or give the whole zone its finish");
  });
}

FormedFace read_face(TableReader& table) {
  FormedFace face;
  set(face.length_m,
      table.quantity("length", length_quantity, limits::face_lengths_m, Presence::required));
  set(face.height_m,
      table.quantity("height", thickness_quantity, limits::face_heights_m, Presence::required));
  set(face.tread_m, table.quantity("tread", thickness_quantity, limits::treads_m));
  face.tread_is_assumed = !table.has("tread");
  face.facing_deg = table.direction_deg("facing");
  face.at = table.point("at");
  return face;
}

/// How far the ends of a joint, typed to the inch, may lie off the outline.
constexpr double joint_slack_m = 0.1;

Joint read_joint(TableReader& table, const Outline& outline) {
  Joint joint;
  const auto from = table.point("from", Presence::required);
  const auto to = table.point("to", Presence::required);
  set(joint.from, from);
  set(joint.to, to);
  if (!from || !to || outline.empty()) return joint;
  if (joint.from == joint.to) table.error("to", "the joint has no length", "", table.where("from"));
  if (outside_by_m(outline, joint.from) > joint_slack_m) {
    table.error("from", "lies outside the zone", "a joint runs inside its zone, side to side");
  }
  if (outside_by_m(outline, joint.to) > joint_slack_m) {
    table.error("to", "lies outside the zone", "a joint runs inside its zone, side to side");
  }
  return joint;
}

void read_joints(TableReader& table, Zone& zone) {
  std::vector<Joint> joints;
  table.in_each("joint",
                [&](TableReader& each) { joints.push_back(read_joint(each, zone.outline)); });
  if (table.none_or_listed("joint", "joints")) zone.joints = std::move(joints);
}

void read_placing(TableReader& table, const PourDay& day, UtcTime start, Zone& zone) {
  zone.placed_toward_deg = table.direction_deg("placed_toward");
  zone.placed_at = read_time(table, "placed_at", day);
  const bool has_start = !start.is_special();  // otherwise its own error is reported
  if (zone.placed_at && has_start && *zone.placed_at < start) {
    table.error("placed_at", fmt::format("is before the pour's start at {}", day.clock.time(start)),
                "after midnight write the date too, such as \"2026-05-15 12:30 AM\"");
  }
}

/// Names of zones, none of which is this one's own.
std::vector<std::string> read_other_zones(TableReader& table, std::string_view key,
                                          const Zone& zone, const std::vector<std::string>& names) {
  auto others = read_zone_names(table, key, names);
  if (!others) return {};
  if (std::find(others->begin(), others->end(), zone.name) == others->end()) return *others;
  table.error(key, "names the zone itself", "name the other zone, or leave the key out");
  return {};
}

}  // namespace

Zone read_zone(TableReader& table, const PourDay& day, UtcTime start,
               const std::vector<std::string>& names) {
  Zone zone;
  zone.where = table.where();
  set(zone.name, table.text("name", Presence::required));
  const Outline written = read_shape(table, zone);
  set(zone.thickness_m,
      table.quantity("thickness", thickness_quantity, limits::thicknesses_m, Presence::required));
  set(zone.base.kind, table.word("base", bases));
  set(zone.base.depth_m, table.quantity("base_depth", thickness_quantity, limits::base_depths_m));
  set(zone.base.kept, table.word("base_kept", keepings));
  set(zone.base.plastic, table.yes_no("base_plastic"));
  set(zone.finish, table.word("finish", finishes, Presence::required));
  read_border(table, zone);
  table.in_each("face", [&](TableReader& face) { zone.faces.push_back(read_face(face)); });
  set(zone.extra_volume_m3,
      table.quantity("extra_volume", volume_quantity, limits::extra_volumes_m3));
  set(zone.colour, read_colour(table, colours));
  zone.absorptance = table.number("absorptance", limits::absorptances, "of the sunlight");
  set(zone.shaded, table.yes_no("shaded"));
  read_ties(table, written, zone);
  read_placing(table, day, start, zone);
  zone.after = read_other_zones(table, "after", zone, names);
  zone.reached_over = read_other_zones(table, "reached_over", zone, names);
  zone.admixtures = read_own_admixtures(table);
  read_joints(table, zone);
  return zone;
}

}  // namespace slabtide
