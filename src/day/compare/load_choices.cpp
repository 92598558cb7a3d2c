#include "load_choices.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "job/model/limits.h"
#include "job/model/wording.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Arrivals are agreed to this (common practice, no source).
constexpr double told_spacing_min = 5.0;

/// "3.25 yd³": the quarters that a plant sells by.
std::string size_words(double m3, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  return fmt::format("{:.2f} {}", us ? yd3_from_m3(m3) : m3, us ? "yd³" : "m³");
}

void add_split(const ChoiceContext& context, int trucks, ChoiceList& list) {
  const UnitSystem units = context.job.units;
  const OrderPlan& order = context.run.order;
  const double size_m3 = sold_m3(order.ordered_m3 / trucks, units);
  const double unload_min = size_m3 / order.placing_rate_m3_h * minutes_per_hour;
  const double spacing_min =
      std::floor((unload_min + context.rules.next_truck_min) / told_spacing_min) * told_spacing_min;
  OfferedChoice offered{ChoiceKind::loads,
                        fmt::format("{} trucks, {} min apart", trucks, spacing_min),
                        fmt::format("{} trucks", trucks),
                        fmt::format("order it in {} trucks of {} at most, one every {} min", trucks,
                                    size_words(size_m3, units), spacing_min),
                        {}};
  if (order.loads.size() == 1 && order.loads.front().is_short) {
    list.leave_out(offered.label, "it is one short load already");
    return;
  }
  if (size_m3 < context.rules.min_load_m3 || !limits::loads_m3.holds(size_m3)) {
    list.leave_out(offered.label, fmt::format("a plant sends no less than {}",
                                              volume_words(context.rules.min_load_m3, units)));
    return;
  }
  if (!limits::spacings_min.holds(spacing_min)) {
    list.leave_out(offered.label, "they would be hours apart");
    return;
  }
  offered.change.load_size_m3 = size_m3;
  offered.change.truck_spacing_min = spacing_min;
  list.offer(std::move(offered));
}

/// A truck of its own, later, for the zone that is placed last.
void add_own_truck(const ChoiceContext& context, ChoiceList& list) {
  const std::string& zone = context.job.pour.placing_sequence.back();
  const double wait_min = context.rules.own_truck_min;
  OfferedChoice offered{
      ChoiceKind::loads,
      fmt::format("own truck for {}", zone),
      fmt::format("{} later", zone),
      fmt::format("order a truck of its own for the {}, {:.0f} min after the rest is placed", zone,
                  wait_min),
      {}};
  offered.change.own_truck = OwnTruck{zone, wait_min};
  list.offer(std::move(offered));
}

}  // namespace

void add_load_choices(const ChoiceContext& context, ChoiceList& list) {
  if (!context.runs_late() && !context.fears({"late_crew", "late_days", "discharge_limit"})) return;
  const auto now = static_cast<int>(context.run.order.loads.size());
  for (const int more : {1, 2}) add_split(context, now + more, list);
  if (context.job.zones.size() > 1) add_own_truck(context, list);
}

}  // namespace slabtide
