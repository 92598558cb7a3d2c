#include "cut_map.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "report/markup/label_places.h"

namespace slabtide {

namespace {

/// Where along the cut its number may be, as fractions of its length; the middle first.
constexpr std::array<double, 9> number_places{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9};

/// Around a disc.
constexpr double disc_gap = 4.0;

Point along(const Joint& joint, double fraction) {
  return {joint.from.x_m + (joint.to.x_m - joint.from.x_m) * fraction,
          joint.from.y_m + (joint.to.y_m - joint.from.y_m) * fraction};
}

Element line_of(const Joint& joint, const PlanView& view, std::string_view kind) {
  Element line("line");
  line.set("class", kind).set("x1", view.x(joint.from.x_m)).set("y1", view.y(joint.from.y_m));
  return line.set("x2", view.x(joint.to.x_m)).set("y2", view.y(joint.to.y_m));
}

/// The space of a number's disc, in which its digits fit.
LabelBox disc_box(Point at, const std::string& number, double type_size) {
  constexpr double least = 1.4;
  constexpr double round_the_digits = 0.4;
  const double across = std::max(least * type_size, label_box(0.0, 0.0, number, type_size).width +
                                                        round_the_digits * type_size);
  return {at.x_m, at.y_m, across + 2.0 * disc_gap, across + 2.0 * disc_gap};
}

/// On the cut and clear of names and earlier discs, else beside it with a line to its middle; none
/// where the whole plan has no room for it.
std::optional<LabelBox> place_of(const Joint& joint, const std::string& number,
                                 const PlanView& view, const MapGround& ground,
                                 const LabelPlaces& taken) {
  const auto at = [&](double fraction) {
    const Point p = along(joint, fraction);
    return disc_box({view.x(p.x_m), view.y(p.y_m)}, number, ground.type_size());
  };
  for (const double fraction : number_places) {
    const LabelBox box = at(fraction);
    if (taken.is_free(box)) return box;
  }
  return taken.nearest_free(at(number_places.front()), view.width(), view.plan_height());
}

Element number_of(const std::string& number, const LabelBox& box) {
  Element disc("circle");
  disc.set("cx", box.x).set("cy", box.y).set("r", box.width / 2.0 - disc_gap);
  Element text("text");
  text.set("x", box.x).set("y", box.y).text(number);
  Element group("g");
  return group.set("class", "cut-number").add(disc).add(text);
}

Element leader_to(const Joint& joint, const LabelBox& box, const PlanView& view) {
  const Point middle = along(joint, number_places.front());
  Element line("line");
  line.set("class", "plan-leader").set("x1", box.x).set("y1", box.y);
  return line.set("x2", view.x(middle.x_m)).set("y2", view.y(middle.y_m));
}

/// Whether the disc stands on its own cut.
bool is_on(const LabelBox& box, const Joint& joint, const PlanView& view) {
  return std::any_of(number_places.begin(), number_places.end(), [&](double fraction) {
    const Point p = along(joint, fraction);
    return view.x(p.x_m) == box.x && view.y(p.y_m) == box.y;
  });
}

Element numbers_of(const SawShift& shift, std::size_t count, const PlanView& view,
                   const MapGround& ground, const PlannedPour& facts) {
  LabelPlaces taken = ground.labels();
  Element leaders("g");
  Element discs("g");
  for (std::size_t i = 0; i < std::min(count, shift.cuts.size()); ++i) {
    const Joint& joint = facts.plan.cuts.cuts[shift.cuts[i].cut].cut.joint;
    const std::string number = std::to_string(i + 1);
    const auto box = place_of(joint, number, view, ground, taken);
    if (!box) continue;
    taken.take(*box);
    if (!is_on(*box, joint, view)) leaders.add(leader_to(joint, *box, view));
    discs.add(number_of(number, *box));
  }
  Element all("g");
  return all.add(leaders).add(discs);
}

Element lines_of(const SawShift& shift, const PlanView& view, const PlannedPour& facts) {
  const auto& cuts = facts.plan.cuts.cuts;
  Element lines("g");
  for (const std::size_t never : shift.never_open) {
    lines.add(line_of(cuts[never].cut.joint, view, "cut never-cut"));
  }
  for (const SawnCut& sawn : shift.cuts) {
    lines.add(line_of(cuts[sawn.cut].cut.joint, view, sawn.late ? "cut late-cut" : "cut"));
  }
  return lines;
}

Element frame(const PlanView& view, const std::string& title) {
  Element svg("svg");
  return svg.set("class", "plan")
      .set("viewBox", view.box())
      .set("role", "img")
      .set("aria-label", title);
}

}  // namespace

Element cut_map(const SawShift& shift, const PlanView& view, const MapGround& ground,
                const PlannedPour& facts, const std::string& title) {
  Element svg = frame(view, title);
  svg.add(use_of("map-ground")).add(lines_of(shift, view, facts));
  svg.add(use_of("map-edges"));  // its names upon the lines
  return svg.add(numbers_of(shift, shift.cuts.size(), view, ground, facts));
}

Element small_cut_map(const SawShift& shift, std::size_t numbered, const PlanView& view,
                      const MapGround& ground, const PlannedPour& facts, const std::string& title) {
  Element content("g");
  content.set("font-size", ground.type_size())
      .add_markup(ground.below())
      .add(lines_of(shift, view, facts))
      .add_markup(ground.above())
      .add(numbers_of(shift, numbered, view, ground, facts));
  return frame(view, title).add(content);
}

}  // namespace slabtide
