#include "cut_map.h"

#include <array>
#include <string_view>

#include "report/markup/label_places.h"

namespace slabtide {

namespace {

/// Where along the cut its number may be, as fractions of its length; the middle first.
constexpr std::array<double, 5> number_places{0.5, 0.3, 0.7, 0.12, 0.88};
constexpr double disc_radius = 27.0;

Point along(const Joint& joint, double fraction) {
  return {joint.from.x_m + (joint.to.x_m - joint.from.x_m) * fraction,
          joint.from.y_m + (joint.to.y_m - joint.from.y_m) * fraction};
}

Element line_of(const Joint& joint, const PlanView& view, std::string_view kind) {
  Element line("line");
  line.set("class", kind).set("x1", view.x(joint.from.x_m)).set("y1", view.y(joint.from.y_m));
  return line.set("x2", view.x(joint.to.x_m)).set("y2", view.y(joint.to.y_m));
}

/// A numbered disc on the cut, placed clear of names and earlier discs if possible.
Element number_of(const Joint& joint, std::size_t number, const PlanView& view,
                  LabelPlaces& taken) {
  constexpr double size = 2.0 * disc_radius;
  LabelBox box;
  for (const double fraction : number_places) {
    const Point p = along(joint, fraction);
    box = {view.x(p.x_m), view.y(p.y_m), size, size};
    if (taken.is_free(box)) break;
  }
  taken.take(box);
  Element disc("circle");
  disc.set("cx", box.x).set("cy", box.y).set("r", disc_radius);
  Element text("text");
  text.set("x", box.x).set("y", box.y).text(std::to_string(number));
  Element group("g");
  return group.set("class", "cut-number").add(disc).add(text);
}

}  // namespace

Element cut_map(const SawShift& shift, const PlanView& view, const MapGround& ground,
                const PlannedPour& facts, const std::string& title) {
  const auto& cuts = facts.plan.cuts.cuts;
  Element svg("svg");
  svg.set("class", "plan").set("viewBox", view.box()).set("role", "img").set("aria-label", title);
  svg.add(use_of("map-ground"));
  for (const std::size_t never : shift.never_open) {
    svg.add(line_of(cuts[never].cut.joint, view, "cut never-cut"));
  }
  for (const SawnCut& sawn : shift.cuts) {
    svg.add(line_of(cuts[sawn.cut].cut.joint, view, sawn.late ? "cut late-cut" : "cut"));
  }
  svg.add(use_of("map-edges"));  // its names upon the lines
  LabelPlaces taken = ground.labels();
  for (std::size_t i = 0; i < shift.cuts.size(); ++i) {
    svg.add(number_of(cuts[shift.cuts[i].cut].cut.joint, i + 1, view, taken));
  }
  return svg;
}

}  // namespace slabtide
