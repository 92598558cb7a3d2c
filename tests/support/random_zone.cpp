#include "support/random_zone.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <boost/date_time/gregorian/gregorian.hpp>

#include "support/random_shape.h"

namespace slabtide::test {

namespace {

constexpr std::array<std::string_view, 7> finishes{
    "stamp", "broom", "texture roll", "float", "trowel", "exposed aggregate", "salt"};
constexpr std::array<std::string_view, 4> bases{"gravel", "soil", "sand", "insulation"};
constexpr std::array<std::string_view, 4> keepings{"bare", "shaded", "wet", "covered"};
constexpr std::array<std::string_view, 4> wall_colours{"white", "light", "medium", "dark"};
constexpr std::array<std::string_view, 6> colours{"grey", "white", "red",
                                                  "tan",  "brown", "charcoal"};
constexpr std::array<std::string_view, 8> directions{
    "\"north\"", "\"south\"", "\"east\"", "\"west\"", "0", "359.9", "45", "\"southwest\""};
constexpr std::array<std::string_view, 4> kinds{"retarder", "stabilizer", "calcium chloride",
                                                "non-chloride accelerator"};

/// Where the next zone goes on the plan.
struct Plot {
  double x_ft = 0.0;
  double y_ft = 0.0;
};

std::string points_text(RandomToml& toml, const RandomShape& shape, const Plot& plot) {
  std::vector<std::string> points;
  for (const Point& point : shape.points) {
    points.push_back(toml.point(plot.x_ft + point.x_m, plot.y_ft + point.y_m));
  }
  return fmt::format("[{}]", fmt::join(points, ", "));
}

std::string place_in(RandomToml& toml, const RandomShape& shape, const Plot& plot) {
  ByteSource& bytes = toml.bytes();
  return toml.point(plot.x_ft + shape.reach_x_ft * bytes.fraction(),
                    plot.y_ft + shape.reach_y_ft * bytes.fraction());
}

void write_shape(RandomToml& toml, const RandomShape& shape, const Plot& plot) {
  toml.raw(shape.is_path ? "path" : "outline", points_text(toml, shape, plot));
  if (shape.is_path) toml.length("width", shape.width_ft);
}

void write_surface(RandomToml& toml) {
  ByteSource& bytes = toml.bytes();
  toml.word("finish", bytes.one_of(finishes));
  if (bytes.one_in(2)) toml.word("colour", bytes.one_of(colours));
  if (bytes.one_in(8)) toml.number("absorptance", bytes.between(0.1, 1.0));
  if (bytes.one_in(8)) toml.yes_no("shaded", bytes.below(2) == 1);
  if (bytes.one_in(4)) toml.yes_no("tied", bytes.below(2) == 1);
}

void write_body(RandomToml& toml) {
  ByteSource& bytes = toml.bytes();
  toml.thickness("thickness", bytes.one_in(4) ? bytes.between(2.0, 24.0) : 4.0);
  if (bytes.one_in(3)) toml.word("base", bytes.one_of(bases));
  if (bytes.one_in(4)) toml.word("base_kept", bytes.one_of(keepings));
  if (bytes.one_in(8)) toml.yes_no("base_plastic", bytes.below(2) == 1);
  if (bytes.one_in(4)) toml.thickness("base_depth", bytes.between(0.0, 36.0));
}

void write_border(RandomToml& toml, const RandomShape& shape) {
  ByteSource& bytes = toml.bytes();
  const std::string_view finish = bytes.one_of(finishes);
  const double narrow_ft =
      shape.is_path ? shape.width_ft : std::min(shape.reach_x_ft, shape.reach_y_ft);
  const double max_ft = narrow_ft * (bytes.one_in(8) ? 0.5 : 0.15);
  toml.line(fmt::format("border = {{ width_ft = {:.3g}, finish = \"{}\" }}",
                        random_length_ft(bytes, 0.17, std::max(0.2, max_ft)), finish));
}

void write_faces(RandomToml& toml, const RandomShape& shape, const Plot& plot) {
  ByteSource& bytes = toml.bytes();
  const std::size_t faces = bytes.one_in(3) ? 1 + bytes.below(3) : 0;
  for (std::size_t i = 0; i < faces; ++i) {
    toml.line("[[zone.face]]");
    toml.length("length", random_length_ft(bytes, 0.5, 40.0));
    toml.thickness("height", bytes.between(1.0, 48.0));
    if (bytes.one_in(2)) toml.raw("facing", bytes.one_of(directions));
    if (bytes.one_in(2)) toml.raw("at", place_in(toml, shape, plot));
  }
}

/// A place on an outline's side between two corners, or on a walkway's line.
std::string place_on(RandomToml& toml, const RandomShape& shape, const Plot& plot) {
  ByteSource& bytes = toml.bytes();
  if (shape.points.empty()) return place_in(toml, shape, plot);
  const std::size_t corner = bytes.below(shape.points.size());
  const Point& from = shape.points[corner];
  const Point& to = shape.points[(corner + 1) % shape.points.size()];
  const double way = bytes.fraction();
  return toml.point(plot.x_ft + from.x_m + way * (to.x_m - from.x_m),
                    plot.y_ft + from.y_m + way * (to.y_m - from.y_m));
}

void write_joints(RandomToml& toml, const RandomShape& shape, const Plot& plot) {
  ByteSource& bytes = toml.bytes();
  const std::size_t joints = bytes.one_in(5) ? 1 + bytes.below(4) : 0;
  for (std::size_t i = 0; i < joints; ++i) {
    toml.line("[[zone.joint]]");
    toml.raw("from", place_on(toml, shape, plot));
    toml.raw("to", place_on(toml, shape, plot));
  }
}

void write_zone(RandomToml& toml, const std::string& name, const RandomShape& shape,
                const Plot& plot, const std::string& date) {
  ByteSource& bytes = toml.bytes();
  toml.line("\n[[zone]]");
  toml.word("name", name);
  write_shape(toml, shape, plot);
  write_body(toml);
  write_surface(toml);
  if (bytes.one_in(4)) toml.raw("placed_toward", bytes.one_of(directions));
  if (bytes.one_in(8)) {
    const std::string clock = random_clock(bytes, 11.0, 24.0);
    toml.word("placed_at", bytes.one_in(3) ? dated(date, 1, random_clock(bytes, 0.0, 8.0)) : clock);
  }
  const bool no_joints = bytes.one_in(12);
  if (no_joints) toml.line("joints = []");
  const bool own_none = bytes.one_in(12);
  if (own_none) toml.line("admixtures = []");
  if (bytes.one_in(5)) write_border(toml, shape);
  write_faces(toml, shape, plot);
  if (!no_joints) write_joints(toml, shape, plot);
  if (!own_none && bytes.one_in(6)) random_admixtures(toml, "zone");
}

void write_obstacle(RandomToml& toml, double reach_ft) {
  ByteSource& bytes = toml.bytes();
  const auto somewhere = [&] {
    return toml.point(bytes.between(-20.0, reach_ft + 20.0), bytes.between(-30.0, 60.0));
  };
  toml.line("\n[[obstacle]]");
  if (bytes.one_in(2)) toml.word("name", "house <1>");
  if (bytes.below(2) == 0) {
    toml.word("kind", "wall");
    toml.raw("from", somewhere());
    toml.raw("to", somewhere());
    if (bytes.one_in(3)) toml.word("colour", bytes.one_of(wall_colours));
  } else {
    toml.word("kind", "tree");
    toml.raw("at", somewhere());
    toml.length("radius", random_length_ft(bytes, 0.5, 80.0));
  }
  toml.length("height", random_length_ft(bytes, 0.5, 200.0));
  if (bytes.one_in(3)) toml.percent("light_through", 100.0 * bytes.fraction());
}

}  // namespace

std::string random_clock(ByteSource& bytes, double from_h, double to_h) {
  constexpr int last_minute = 24 * 60 - 1;
  int minute = static_cast<int>(std::lround(bytes.between(from_h, to_h) * 60.0));
  if (bytes.below(2) == 0) minute = minute / 15 * 15;
  minute = std::min(minute, last_minute);
  return fmt::format("{:02}:{:02}", minute / 60, minute % 60);
}

std::string dated(const std::string& date, int days, const std::string& clock) {
  const auto day = boost::gregorian::from_simple_string(date) + boost::gregorian::days(days);
  return boost::gregorian::to_iso_extended_string(day) + "T" + clock;
}

void random_admixtures(RandomToml& toml, const std::string& table) {
  ByteSource& bytes = toml.bytes();
  const std::size_t count = 1 + bytes.below(2);
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t kind = bytes.below(kinds.size());
    const bool later = kind < 2;
    toml.line(fmt::format("[[{}.admixture]]", table));
    toml.word("kind", kinds.at(kind));
    if (bytes.one_in(3)) {
      toml.number("shift", later ? bytes.between(0.0, bytes.one_in(3) ? 36.0 : 6.0)
                                 : bytes.between(-6.0, 0.0));
    } else if (kinds.at(kind) == "calcium chloride") {
      toml.number("dose_percent", bytes.between(0.0, 2.0));
    } else {
      toml.dose("dose", bytes.between(0.0, later ? 15.9 : 59.0));
    }
  }
}

void random_zones(RandomToml& toml, const std::vector<std::string>& names, const std::string& date,
                  bool faulty) {
  ByteSource& bytes = toml.bytes();
  Plot plot;
  if (bytes.one_in(4)) plot = {bytes.between(-2000.0, 2000.0), bytes.between(-2000.0, 2000.0)};
  for (const std::string& name : names) {
    RandomShape shape = random_shape(bytes, faulty);
    if (faulty && shape.is_path && bytes.one_in(6)) shape.points.resize(bytes.below(2));
    write_zone(toml, name, shape, plot, date);
    plot.x_ft += shape.reach_x_ft + (bytes.below(2) == 0 ? 0.0 : bytes.between(0.0, 10.0));
  }
  const std::size_t obstacles = bytes.below(4);
  for (std::size_t i = 0; i < obstacles; ++i) write_obstacle(toml, plot.x_ft);
}

}  // namespace slabtide::test
