#include "slabtide/day/pour/order.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "job/checks/load_runs.h"
#include "job/checks/validate.h"
#include "job/geometry/placing_sequence.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Worker-hours per cubic metre.
double labour_h_per_m3(const Pour& pour, const PlacingRates& rates) {
  const double haul_m = pour.haul_distance_m.value_or(rates.base_haul_m);
  const double hauls = std::max(1.0, haul_m / rates.base_haul_m);
  switch (pour.hauling) {
    case Hauling::chute:
      return rates.chute_worker_h_per_m3;
    case Hauling::motor_buggy:
      return rates.chute_worker_h_per_m3 + hauls * rates.buggy_added_worker_h_per_m3;
    case Hauling::wheelbarrow:
      return rates.chute_worker_h_per_m3 + hauls * rates.wheelbarrow_added_worker_h_per_m3;
    case Hauling::pump:
      return rates.pump_worker_h_per_m3;
  }
  return rates.chute_worker_h_per_m3;
}

/// Places zone after zone from load after load.
class Pouring {
 public:
  Pouring(const Job& job, OrderPlan& plan)
      : job_(job), plan_(plan), now_(job.pour.start), left_to_load_m3_(run_volume_m3(job, 0)) {}

  void place(std::size_t index) {
    const Zone& zone = job_.zones[index];
    if (zone.placed_at) start_again(*zone.placed_at);
    const double whole_m3 = ordered_m3(job_, zone);
    double placed_m3 = 0.0;
    while (whole_m3 - placed_m3 > nothing_m3) {
      if (left_in_load_m3_ <= nothing_m3) next_load();
      const double part_m3 = std::min(whole_m3 - placed_m3, left_in_load_m3_);
      unload(index, placed_m3 / whole_m3, (placed_m3 + part_m3) / whole_m3, part_m3);
      placed_m3 += part_m3;
    }
    ++placed_zones_;
  }

  void finish() {
    for (Load& load : plan_.loads) {
      load.sold_m3 = std::min(sold_m3(load.volume_m3, job_.units), job_.order.load_size_m3);
      plan_.sold_m3 += load.sold_m3;
      load.empty = load.fractions.back().end;
      const double minutes = seconds_between(load.batched, load.empty) / seconds_per_minute;
      load.over_limit = minutes > job_.order.discharge_limit_min;
      load.is_short = load.volume_m3 < job_.order.short_load_m3;
    }
  }

 private:
  void start_again(UtcTime at) {
    now_ = at;
    left_in_load_m3_ = 0.0;
    left_to_load_m3_ = run_volume_m3(job_, placed_zones_);
    run_start_ = at;
    run_first_load_ = plan_.loads.size();
  }

  /// A truck comes when the one before is empty, or at the requested spacing.
  UtcTime arrival() const {
    if (!job_.order.truck_spacing_min) return now_;
    const auto before = static_cast<double>(plan_.loads.size() - run_first_load_);
    return after_seconds(run_start_.is_not_a_date_time() ? job_.pour.start : run_start_,
                         before * *job_.order.truck_spacing_min * seconds_per_minute);
  }

  /// An even share of what is left, in what a plant sells, that the trucks to come can carry.
  double next_volume_m3() const {
    const double full_m3 = job_.order.load_size_m3;
    const auto trucks =
        static_cast<double>(std::max<std::size_t>(1, loads_of(left_to_load_m3_, full_m3)));
    const double even_m3 = sold_m3(left_to_load_m3_ / trucks, job_.units);
    const double least_m3 = left_to_load_m3_ - (trucks - 1.0) * full_m3;
    return std::min({std::max(even_m3, least_m3), full_m3, left_to_load_m3_});
  }

  void next_load() {
    Load load;
    load.number = static_cast<int>(plan_.loads.size()) + 1;
    load.volume_m3 = next_volume_m3();
    load.arrives = arrival();
    load.starts = now_ = std::max(now_, load.arrives);
    load.batched = after_seconds(load.arrives, -job_.pour.transit_min * seconds_per_minute);
    for (const LoadNote& note : job_.order.loads) {
      if (note.number != load.number) continue;
      load.admixtures = note.admixtures;
      load.own_admixtures = true;
    }
    left_to_load_m3_ -= load.volume_m3;
    left_in_load_m3_ = load.volume_m3;
    plan_.loads.push_back(std::move(load));
  }

  void unload(std::size_t zone, double from_fraction, double to_fraction, double part_m3) {
    const UtcTime end = after_seconds(now_, part_m3 / plan_.placing_rate_m3_h * seconds_per_hour);
    plan_.loads.back().fractions.push_back({zone, from_fraction, to_fraction, now_, end});
    ZonePlacing& placing = plan_.placings[zone];
    if (from_fraction <= 0.0) placing.start = now_;
    placing.end = end;
    now_ = end;
    left_in_load_m3_ -= part_m3;
  }

  const Job& job_;
  OrderPlan& plan_;
  UtcTime now_;
  UtcTime run_start_;
  std::size_t run_first_load_ = 0;
  std::size_t placed_zones_ = 0;
  double left_to_load_m3_ = 0.0;
  double left_in_load_m3_ = 0.0;
};

}  // namespace

double placing_rate_m3_h(const Pour& pour, const PlacingRates& rates) {
  if (pour.placing_rate_m3_h) return *pour.placing_rate_m3_h;
  if (pour.placing_crew < 1) throw std::invalid_argument("placing crew under 1");
  const double labour = labour_h_per_m3(pour, rates);
  constexpr double max_h_per_m3 = 1000.0;
  if (!(labour > 0.0 && labour <= max_h_per_m3)) {
    throw std::invalid_argument(
        "placing.chute_worker_h_per_m3 and what is added for the haul come to no labor for a "
        "crew");
  }
  return pour.placing_crew / labour;
}

double sold_m3(double m3, UnitSystem units) {
  constexpr double quarters = 4.0;
  constexpr double let_pass = 0.02;
  const double unit_m3 = units == UnitSystem::us ? m3_from_yd3(1.0) : 1.0;
  return std::ceil(m3 / unit_m3 * quarters - let_pass) / quarters * unit_m3;
}

double Load::waits_min() const { return seconds_between(arrives, starts) / seconds_per_minute; }

bool Load::waits() const {
  constexpr double told_from_min = 5.0;
  return waits_min() >= told_from_min;
}

UtcTime OrderPlan::first_placed() const {
  UtcTime first = placings.front().start;
  for (const ZonePlacing& placing : placings) first = std::min(first, placing.start);
  return first;
}

OrderPlan plan_order(const Job& job, const PlacingRates& rates) {
  validate(job);
  OrderPlan plan;
  plan.placing_rate_m3_h = placing_rate_m3_h(job.pour, rates);
  plan.placings.resize(job.zones.size());
  for (const Zone& zone : job.zones) {
    plan.neat_m3 += volume_m3(zone);
    plan.low_base_m3 += area_m2(zone.outline) * job.order.low_base_m;
  }
  plan.ordered_m3 = plan.neat_m3 * (1.0 + job.order.allowance_fraction);
  Pouring pouring(job, plan);
  for (const std::size_t zone : zones_in_order(job)) pouring.place(zone);
  pouring.finish();
  return plan;
}

PlacedFrom placed_from(const OrderPlan& order, std::size_t zone, double fraction) {
  PlacedFrom last;
  for (std::size_t i = 0; i < order.loads.size(); ++i) {
    for (const LoadShare& stretch : order.loads[i].fractions) {
      if (stretch.zone != zone) continue;
      const double width = stretch.to_fraction - stretch.from_fraction;
      const double way = width > 0.0 ? (fraction - stretch.from_fraction) / width : 0.0;
      const double within = std::clamp(way, 0.0, 1.0);
      last = {i,
              after_seconds(stretch.start, within * seconds_between(stretch.start, stretch.end))};
      if (fraction < stretch.to_fraction) return last;
    }
  }
  return last;
}

}  // namespace slabtide
