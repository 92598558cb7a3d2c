#include "read_obstacle.h"

#include <array>

#include <fmt/format.h>

#include "job/toml/job_words.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr auto obstacle_kinds =
    std::to_array<Word<ObstacleKind>>({{"wall", ObstacleKind::wall}, {"tree", ObstacleKind::tree}});

// Share of the sunlight thrown back. Status: from memory (Oke 1987, Boundary Layer Climates): white
// paint 0.5 to 0.9, light colours 0.3 to 0.5, brick and stone 0.2 to 0.4, dark paint 0.1 to 0.2,
// trees in leaf 0.15 to 0.2. A wall whose colour is not told is taken as brick.
constexpr auto albedos =
    std::to_array<Word<double>>({{"white", 0.7}, {"light", 0.5}, {"medium", 0.3}, {"dark", 0.15}});
constexpr double leaves_albedo = 0.18;

/// Refuses a key that belongs to the other kind.
void refuse_foreign(TableReader& table, std::string_view key, std::string_view kind,
                    std::string_view next_step) {
  if (!table.has(key)) return;
  table.error(key, fmt::format("does not belong to a {}", kind), std::string(next_step));
}

void require(TableReader& table, std::string_view key, std::string_view kind) {
  if (table.has(key)) return;
  table.error("", fmt::format("a {} needs `{}`", kind, key));
}

void check_wall(TableReader& table, const Obstacle& wall) {
  for (const auto* const key : {"from", "to"}) require(table, key, "wall");
  for (const auto* const key : {"at", "radius"}) {
    refuse_foreign(table, key, "wall", "a wall runs `from` one point `to` another");
  }
  if (table.has("from") && table.has("to") && wall.from == wall.to) {
    table.error("to", "the wall has no length", "", table.where("from"));
  }
}

void check_tree(TableReader& table) {
  for (const auto* const key : {"colour", "color"}) {
    refuse_foreign(table, key, "tree", "leaves reflect about a sixth of the light");
  }
  for (const auto* const key : {"at", "radius"}) require(table, key, "tree");
  for (const auto* const key : {"from", "to"}) {
    refuse_foreign(table, key, "tree", "a tree stands `at` a point and has a `radius`");
  }
}

}  // namespace

Obstacle read_obstacle(TableReader& table) {
  Obstacle obstacle;
  set(obstacle.name, table.text("name"));
  const auto kind = table.word("kind", obstacle_kinds, Presence::required);
  set(obstacle.kind, kind);
  set(obstacle.from, table.point("from"));
  set(obstacle.to, table.point("to"));
  set(obstacle.from, table.point("at"));
  set(obstacle.radius_m, table.quantity("radius", length_quantity, limits::radii_m));
  set(obstacle.height_m,
      table.quantity("height", length_quantity, limits::heights_m, Presence::required));
  set(obstacle.light_through,
      table.quantity("light_through", fraction_quantity, limits::fractions));
  if (kind == ObstacleKind::tree) obstacle.albedo = leaves_albedo;
  set(obstacle.albedo, read_colour(table, albedos));
  if (!kind) return obstacle;
  if (*kind == ObstacleKind::wall) {
    check_wall(table, obstacle);
  } else {
    check_tree(table);
  }
  return obstacle;
}

}  // namespace slabtide
