#include "worst_jobs.h"

#include <cmath>
#include <functional>
#include <numbers>
#include <random>
#include <string_view>

#include <fmt/format.h>

namespace slabtide::bench {

namespace {

constexpr std::string_view head = R"(name = "Worst job"
[site]
name = "yard"
latitude = 40.4
longitude = -82.5
elevation = 1000
time_zone = "America/New_York"
wind_setting = "yard"
[pour]
date = 2026-07-16
start = "07:00"
transit = 35
placing_rate = 40
saws = ["early-entry", "wet"]
[weather]
high = 88
low = 66
dew_point = 60
wind = 7
cloud = 5
[mix]
cementitious = 564
w_cm = 0.45
strength = 4000
concrete_temperature = 80
)";

std::string zone(int number, const std::string& shape, const std::string& more = {}) {
  return fmt::format(
      "[[zone]]\nname = \"zone {}\"\n{}\nthickness = 4\nbase = \"gravel\"\nbase_depth = 4\n"
      "finish = \"stamp\"\n{}\n",
      number, shape, more);
}

std::string rectangle(double x, double y, double width, double depth) {
  return fmt::format("outline = [[{0}, {1}], [{2}, {1}], [{2}, {3}], [{0}, {3}]]", x, y, x + width,
                     y + depth);
}

std::string points(std::string_view key, int count,
                   const std::function<std::pair<double, double>(int)>& place) {
  std::string list;
  for (int i = 0; i < count; ++i) {
    const auto [x, y] = place(i);
    list += fmt::format("{}[{:.4f}, {:.4f}]", i == 0 ? "" : ",\n ", x, y);
  }
  return fmt::format("{} = [{}]", key, list);
}

std::string star(int corners, double x, double y, double out, double in) {
  return points("outline", corners, [=](int i) {
    const double angle = 2.0 * std::numbers::pi * i / corners + 0.01;
    const double r = i % 2 == 0 ? out : in;
    return std::pair(x + r * std::cos(angle), y + r * std::sin(angle));
  });
}

/// Trees, and where they are not the only kind every other is a wall.
std::string obstacles(int count, double width, double depth, bool walls) {
  std::mt19937 bits(5);
  const auto in_range = [&bits](double low, double high) {
    constexpr double span = 4294967296.0;
    return low + (high - low) * static_cast<double>(bits()) / span;
  };
  std::string text;
  for (int i = 0; i < count; ++i) {
    const double x = in_range(-40.0, width + 40.0);
    const double y = in_range(-40.0, depth + 40.0);
    const double angle = in_range(0.0, 2.0 * std::numbers::pi);
    text += walls && i % 2 == 0
                ? fmt::format(
                      "[[obstacle]]\nname = \"wall {}\"\nkind = \"wall\"\nfrom = [{:.2f}, "
                      "{:.2f}]\nto = [{:.2f}, {:.2f}]\nheight = 12\n",
                      i, x, y, x + 20.0 * std::cos(angle), y + 20.0 * std::sin(angle))
                : fmt::format(
                      "[[obstacle]]\nname = \"tree {}\"\nkind = \"tree\"\nat = [{:.2f}, "
                      "{:.2f}]\nradius = 8\nheight = 30\nlight_through = 15\n",
                      i, x, y);
  }
  return text;
}

std::string many_zones(int count, int in_row, double apart, double side,
                       const std::function<std::string(double, double)>& more) {
  std::string text;
  for (int i = 0; i < count; ++i) {
    const double x = apart * (i % in_row);
    const double y = apart * static_cast<double>(i / in_row);
    text += zone(i + 1, rectangle(x, y, side, side), more(x, y));
  }
  return text;
}

std::string bordered(double, double) { return "border = { width = 1, finish = \"broom\" }"; }

std::string forty_faces(double x, double y) {
  constexpr std::string_view ways[] = {"north", "east", "south", "west"};
  std::string text;
  for (int i = 0; i < 40; ++i) {
    text += fmt::format("[[zone.face]]\nlength = 5\nheight = 7\nfacing = \"{}\"\nat = [{}, {}]\n",
                        ways[i % 4], x + i, y + 7 * i % 40);
  }
  return text;
}

/// 194 joints, two drawn bunches across each other.
std::string lattice(double x, double y) {
  std::string text;
  for (int i = 1; i <= 97; ++i) {
    const double at = 50.0 * i / 98.0;
    text += fmt::format(
        "[[zone.joint]]\nfrom = [{0:.3f}, {1}]\nto = [{0:.3f}, {2}]\n"
        "[[zone.joint]]\nfrom = [{3}, {4:.3f}]\nto = [{5}, {4:.3f}]\n",
        x + at, y, y + 50.0, x, y + at, x + 50.0);
  }
  return text;
}

std::string ten_stars() {
  std::string text;
  for (int i = 0; i < 10; ++i) {
    text += zone(i + 1, star(400, 100.0 * (i % 5), 100.0 * static_cast<double>(i / 5), 38, 30));
  }
  return text;
}

std::string wiggly_walk() {
  return points("path", 200, [](int i) { return std::pair(4.0 * i, 3.0 * (i % 2)); }) +
         "\nwidth = 3";
}

/// A crew of 60, 40 of them each with a pace and hours of their own.
std::string many_hands() {
  std::string text = "[crew]\nfinishers = 60\n";
  for (int i = 0; i < 40; ++i) {
    text += fmt::format("[[hand]]\nname = \"hand {}\"\npace = {:.2f}\nfrom = \"{:02}:00\"\n", i,
                        0.6 + 0.02 * i, 6 + i % 3);
    if (i % 2 == 1) text += fmt::format("to = \"{}:00\"\n", 14 + i % 5);
  }
  return text;
}

}  // namespace

std::vector<WorstJob> worst_jobs() {
  const std::string slab = zone(1, rectangle(0, 0, 270, 200));
  const std::string hundred = many_zones(100, 10, 25, 22, bordered);
  std::vector<WorstJob> jobs{
      {"one_slab", slab},
      {"under_100_trees", slab + obstacles(100, 270, 200, false)},
      {"among_200", zone(1, rectangle(0, 0, 100, 100)) + obstacles(200, 100, 100, true)},
      {"100_zones", hundred},
      {"100_zones_among_200", hundred + obstacles(200, 250, 250, true)},
      {"400_faces", many_zones(10, 5, 60, 40, forty_faces) + obstacles(40, 280, 100, false)},
      {"20_zones", many_zones(20, 5, 30, 25, bordered)},
      {"60_hands", many_zones(20, 5, 30, 25, bordered) + many_hands()},
      {"970_joints", many_zones(5, 5, 70, 50, lattice)},
      {"star_200", zone(1, star(200, 0, 0, 65, 45))},
      {"star_400", zone(1, star(400, 0, 0, 65, 15))},
      {"ten_stars", ten_stars()},
      {"walk_200_points", zone(1, wiggly_walk())},
      {"walk_999_ft", zone(1, "path = [[0, 0], [999, 0]]\nwidth = 0.5")}};
  for (WorstJob& job : jobs) job.toml = std::string(head) + job.toml;
  return jobs;
}

}  // namespace slabtide::bench
