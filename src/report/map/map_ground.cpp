#include "map_ground.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "job/geometry/zone_geometry.h"
#include "job/model/wording.h"
#include "report/markup/embedded_pages.h"
#include "report/markup/page_parts.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

// Dimensions of the drawing, in its own units (ours).
constexpr double wall_width = 10.0;
constexpr double label_gap = 6.0;
constexpr double search_step = 10.0;
/// The scale bar is about this fraction of the drawing's width.
constexpr double scale_bar_fraction = 0.25;

constexpr std::array<double, 8> round_feet{2, 5, 10, 20, 50, 100, 200, 500};
constexpr std::array<double, 8> round_metres{0.5, 1, 2, 5, 10, 20, 50, 100};

double halfway(double low, double high) { return (low + high) / 2.0; }

/// The middle of a walkway's line, else of the box around the outline.
Point anchor_of(const Zone& zone) {
  if (zone.path) return middle_of(zone.path->line);
  Point low = zone.outline.front();
  Point high = low;
  for (const Point& p : zone.outline) {
    low = {std::min(low.x_m, p.x_m), std::min(low.y_m, p.y_m)};
    high = {std::max(high.x_m, p.x_m), std::max(high.y_m, p.y_m)};
  }
  return {halfway(low.x_m, high.x_m), halfway(low.y_m, high.y_m)};
}

Element label(const LabelBox& box, std::string_view text, std::string_view kind) {
  Element element("text");
  element.set("class", kind).set("x", std::round(box.x)).set("y", std::round(box.y)).text(text);
  return element;
}

/// Whether all of the box is inside the outline.
bool is_within(const LabelBox& box, const Outline& outline) {
  constexpr int steps = 8;
  for (int i = 0; i <= steps; ++i) {
    for (int j = 0; j <= 4; ++j) {
      const Point p{box.x + box.width * (static_cast<double>(i) / steps - 0.5),
                    box.y + box.height * (static_cast<double>(j) / 4.0 - 0.5)};
      if (!contains(outline, p)) return false;
    }
  }
  return true;
}

/// "A" to "Z", then "AA": letters, so that they are not taken for the numbers of cuts.
std::string letters_of(std::size_t index) {
  constexpr std::size_t letter_count = 26;
  std::string letters;
  for (std::size_t rest = index + 1; rest > 0; rest = (rest - 1) / letter_count) {
    letters.insert(letters.begin(), static_cast<char>('A' + (rest - 1) % letter_count));
  }
  return letters;
}

Element clip_path(std::string_view id, std::string_view data) {
  Element path("path");
  path.set("d", data).set("clip-rule", "evenodd");
  Element clip("clipPath");
  clip.set("id", id).add(path);
  return clip;
}

}  // namespace

Element use_of(std::string_view id) {
  Element use("use");
  use.set("href", fmt::format("#{}", id));
  return use;
}

std::string MapGround::whole_id(std::size_t zone) { return fmt::format("map-whole-{}", zone); }
std::string MapGround::field_id(std::size_t zone) { return fmt::format("map-field-{}", zone); }
std::string MapGround::border_id(std::size_t zone) { return fmt::format("map-strip-{}", zone); }

MapGround::MapGround(const Job& job, const PlanView& view, double type_size)
    : job_(job), view_(view), type_(type_size) {
  place_names();
  ground_ = ground().str();
  edges_ = edges().str();
}

std::string MapGround::label_of(std::size_t zone) const { return words_[zone]; }

std::string MapGround::definitions() const {
  Element defs("defs");
  defs.add_markup(embedded::page_patterns_svg())
      .add(clips())
      .add(Element("g").set("id", "map-ground").add_markup(ground_))
      .add(Element("g").set("id", "map-edges").add_markup(edges_));
  Element svg("svg");
  svg.set("class", "map-definitions").set("width", "0").set("height", "0");
  return svg.set("aria-hidden", "true").add(defs).str();
}

Element MapGround::clips() const {
  Element all("g");
  for (std::size_t i = 0; i < job_.zones.size(); ++i) {
    const Zone& zone = job_.zones[i];
    const std::string whole = view_.ring(zone.outline);
    all.add(clip_path(whole_id(i), whole));
    if (!zone.border) continue;
    std::string field;
    for (const Outline& ring : inset(zone.outline, zone.border->width_m)) field += view_.ring(ring);
    all.add(clip_path(field_id(i), field)).add(clip_path(border_id(i), whole + field));
  }
  return all;
}

Element MapGround::ground() {
  Element all("g");
  for (const Obstacle& one : job_.obstacles) all.add(obstacle(one));
  return all;
}

Element MapGround::obstacle(const Obstacle& obstacle) {
  return obstacle.kind == ObstacleKind::wall ? wall(obstacle) : tree(obstacle);
}

Element MapGround::wall(const Obstacle& obstacle) {
  const double x1 = view_.x(obstacle.from.x_m);
  const double y1 = view_.y(obstacle.from.y_m);
  const double x2 = view_.x(obstacle.to.x_m);
  const double y2 = view_.y(obstacle.to.y_m);
  Element line("line");
  line.set("class", "plan-wall").set("x1", x1).set("y1", y1).set("x2", x2).set("y2", y2);
  Element group("g");
  group.add(line);
  return obstacle.name.empty() ? group : group.add(wall_name(obstacle));
}

/// Beside the wall, on the side with more room if it is free there; none where nothing is free.
Element MapGround::wall_name(const Obstacle& obstacle) {
  const Point one{view_.x(obstacle.from.x_m), view_.y(obstacle.from.y_m)};
  const Point other{view_.x(obstacle.to.x_m), view_.y(obstacle.to.y_m)};
  const bool steep = std::abs(other.y_m - one.y_m) > std::abs(other.x_m - one.x_m);
  const double away = (wall_width + type_) / 2.0 + label_gap;
  for (const double side : {1.0, -1.0}) {
    for (const double fraction : {0.5, 0.25, 0.75}) {
      const double x = std::clamp(one.x_m + (other.x_m - one.x_m) * fraction, 0.0, view_.width());
      const double y =
          std::clamp(one.y_m + (other.y_m - one.y_m) * fraction, 0.0, view_.plan_height());
      LabelBox box = label_box(x, y, obstacle.name, type_);
      if (steep) {
        std::swap(box.width, box.height);
        box.x += side * (x > view_.width() / 2.0 ? away : -away);
      } else {
        box.y += side * (y > view_.plan_height() / 2.0 ? away : -away);
      }
      box = box.within(view_.width(), view_.plan_height(), 0.0);
      if (!labels_.claim(box)) continue;
      Element text = label(box, obstacle.name, "plan-letters plan-landmark");
      if (!steep) return text;
      return text.set("transform", fmt::format("rotate(-90 {} {})", short_number(box.x, 0),
                                               short_number(box.y, 0)));
    }
  }
  return Element("g");
}

Element MapGround::tree(const Obstacle& obstacle) {
  const double x = view_.x(obstacle.from.x_m);
  const double y = view_.y(obstacle.from.y_m);
  Element circle("circle");
  circle.set("class", "plan-tree").set("cx", x).set("cy", y);
  circle.set("r", std::round(obstacle.radius_m * view_.units_per_m()));
  Element group("g");
  group.add(circle);
  if (obstacle.name.empty()) return group;
  const LabelBox box = label_box(x, y, obstacle.name, type_);
  const auto place = labels_.nearest_free(box, view_.width(), view_.plan_height());
  // Farther off it would be taken for something else's.
  if (!place || std::hypot(place->x - x, place->y - y) > box.width + 2.0 * type_) return group;
  labels_.take(*place);
  return group.add(label(*place, obstacle.name, "plan-letters plan-landmark"));
}

void MapGround::place_names() {
  for (std::size_t i = 0; i < job_.zones.size(); ++i) place_name(i);
  for (std::size_t i = 0; i < job_.zones.size(); ++i) {
    if (!names_[i]) place_letter_outside(i);
  }
}

/// The space of a zone's name, which is bold; a letter alone may be a wide one.
LabelBox MapGround::name_box(double x, double y, std::string_view words) const {
  constexpr double bold = 1.25;
  constexpr double widest_letter = 1.1;
  LabelBox box = label_box(x, y, words, type_);
  box.width = std::max(box.width * bold, widest_letter * type_);
  return box;
}

bool MapGround::is_off_zones(const LabelBox& box) const {
  const Point middle{box.x, box.y};
  for (std::size_t i = 0; i < job_.zones.size(); ++i) {
    if (contains(drawn(i), middle)) return false;
  }
  return true;
}

Outline MapGround::drawn(std::size_t zone) const {
  Outline outline;
  for (const Point& p : job_.zones[zone].outline)
    outline.push_back({view_.x(p.x_m), view_.y(p.y_m)});
  return outline;
}

/// The free place inside the zone that is nearest to its middle; none if the words do not fit in.
std::optional<LabelBox> MapGround::place_inside(std::size_t zone, std::string_view words) const {
  const Point anchor = anchor_of(job_.zones[zone]);
  const LabelBox home = name_box(view_.x(anchor.x_m), view_.y(anchor.y_m), words);
  const Outline outline = drawn(zone);
  Point low = outline.front();
  Point high = low;
  for (const Point& p : outline) {
    low = {std::min(low.x_m, p.x_m), std::min(low.y_m, p.y_m)};
    high = {std::max(high.x_m, p.x_m), std::max(high.y_m, p.y_m)};
  }
  std::optional<LabelBox> best;
  const auto away = [&home](const LabelBox& box) {
    return std::hypot(box.x - home.x, box.y - home.y);
  };
  const auto consider = [&](double x, double y) {
    LabelBox box = home;
    box.x = x;
    box.y = y;
    if (best && away(box) >= away(*best)) return;
    if (is_within(box, outline) && labels_.is_free(box)) best = box;
  };
  consider(home.x, home.y);
  const Point first{low.x_m + home.width / 2.0, low.y_m + home.height / 2.0};
  const auto places = [](double from, double to) {
    return to < from ? 0 : 1 + static_cast<int>((to - from) / search_step);
  };
  for (int row = 0; row < places(first.y_m, high.y_m); ++row) {
    for (int column = 0; column < places(first.x_m, high.x_m); ++column) {
      consider(first.x_m + search_step * column, first.y_m + search_step * row);
    }
  }
  return best;
}

/// The name inside its zone, or a letter there if the name does not fit, which the key explains.
void MapGround::place_name(std::size_t zone) {
  const std::string& name = job_.zones[zone].name;
  const std::string letter = letters_of(zone);
  const auto inside = place_inside(zone, name);
  names_.push_back(inside ? inside : place_inside(zone, letter));
  words_.push_back(inside ? name : letter);
  if (names_.back()) labels_.take(*names_.back());
}

/// The letter of a zone too small for it: beside the zones if there is room, with a line to its
/// own.
void MapGround::place_letter_outside(std::size_t zone) {
  const Point anchor = anchor_of(job_.zones[zone]);
  const LabelBox home = name_box(view_.x(anchor.x_m), view_.y(anchor.y_m), words_[zone]);
  const double width = view_.width();
  const double height = view_.plan_height();
  auto place = labels_.nearest_free(home, width, height,
                                    [this](const LabelBox& box) { return is_off_zones(box); });
  if (!place) place = labels_.nearest_free(home, width, height);
  names_[zone] = place;
  if (place) labels_.take(*place);
}

/// From a letter that has no room in its zone to the zone.
Element MapGround::leader(std::size_t zone) const {
  const Point anchor = anchor_of(job_.zones[zone]);
  Element line("line");
  line.set("class", "plan-leader").set("x1", std::round(names_[zone]->x));
  line.set("y1", std::round(names_[zone]->y));
  return line.set("x2", view_.x(anchor.x_m)).set("y2", view_.y(anchor.y_m));
}

Element MapGround::key() const {
  Element list("ul");
  list.set("class", "map-names");
  for (std::size_t i = 0; i < job_.zones.size(); ++i) {
    if (words_[i] == job_.zones[i].name) continue;
    Element item("li");
    item.add(Element("b").text(words_[i])).text(" ").add(named_place(job_.zones[i].name, job_));
    list.add(item);
  }
  return list.empty() ? Element("span") : list;
}

Element MapGround::edges() {
  Element all("g");
  for (const Zone& zone : job_.zones) {
    Element path("path");
    all.add(path.set("class", "plan-zone").set("d", view_.ring(zone.outline)));
  }
  for (std::size_t i = 0; i < names_.size(); ++i) {
    if (names_[i] && !is_within(*names_[i], drawn(i))) all.add(leader(i));
  }
  for (std::size_t i = 0; i < names_.size(); ++i) {
    if (names_[i]) all.add(label(*names_[i], label_of(i), "plan-letters plan-zone-name"));
  }
  return all.add(scale_bar()).add(north());
}

Element MapGround::scale_bar() const {
  const bool us = job_.units == UnitSystem::us;
  const auto& rounds = us ? round_feet : round_metres;
  const double unit_m = us ? metres_per_foot : 1.0;
  const double wished = scale_bar_fraction * view_.width() / view_.units_per_m() / unit_m;
  double length = rounds.front();
  for (const double round : rounds) {
    if (round <= wished) length = round;
  }
  const double units = std::round(length * unit_m * view_.units_per_m());
  const double size = type_ / map_type_size;
  const double left = 20.0;
  const double bottom = view_.height() - 20.0 * size;
  Element bar("path");
  bar.set("class", "plan-scale")
      .set("d",
           fmt::format("M{} {}v{tick}h{}v-{tick}", left, short_number(bottom - 14.0 * size, 0),
                       short_number(units, 0), fmt::arg("tick", short_number(14.0 * size, 0))));
  Element words("text");
  words.set("class", "plan-letters plan-scale-words")
      .set("x", std::round(left + units + 14.0 * size))
      .set("y", std::round(bottom - 4.0 * size));
  words.text(fmt::format("{} {}", short_number(length), us ? "ft" : "m"));
  Element group("g");
  return group.add(bar).add(words);
}

Element MapGround::north() const {
  const double size = type_ / map_type_size;
  const double x = view_.width() - 36.0 * size;
  const double y = view_.height() - 78.0 * size;
  const auto part = [size](double length) { return short_number(length * size, 0); };
  Element arrow("path");
  arrow.set("class", "plan-north")
      .set("d", fmt::format("M{} {}l{across} {}-{across}-{}-{across} {}z", short_number(x, 0),
                            short_number(y, 0), part(44.0), part(10.0), part(10.0),
                            fmt::arg("across", part(16.0))));
  Element letter("text");
  letter.set("class", "plan-letters")
      .set("x", std::round(x - 44.0 * size))
      .set("y", std::round(y + 28.0 * size))
      .text("N");
  Element group("g");
  return group.add(arrow).add(letter);
}

}  // namespace slabtide
