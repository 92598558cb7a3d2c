#include "slabtide/day/uncertainty/bands.h"

#include <algorithm>
#include <functional>

#include "doubt.h"
#include "drawn_cautions.h"
#include "frost_days.h"
#include "late_days.h"

namespace slabtide {

namespace {

constexpr double early_fraction = 0.1;
constexpr double likely_fraction = 0.5;
constexpr double late_fraction = 0.9;

using TimeOf = std::function<std::optional<double>(const ColumnEvents&)>;

std::optional<double> earlier(const std::optional<double>& a, const std::optional<double>& b) {
  if (!a || !b) return a ? a : b;
  return std::min(*a, *b);
}

std::optional<double> later(const std::optional<double>& a, const std::optional<double>& b) {
  if (!a || !b) return std::nullopt;
  return std::max(*a, *b);
}

/// A part's time on a given day.
using OnDay = std::function<std::optional<double>(const DayEvents&)>;

/// The earlier of a part's two columns: on another day the last may be the first.
OnDay first_of(const PartColumns& columns, const TimeOf& time_of) {
  return [columns, time_of](const DayEvents& day) {
    return earlier(time_of(day[columns.first]), time_of(day[columns.last]));
  };
}

OnDay last_of(const PartColumns& columns, const TimeOf& time_of) {
  return [columns, time_of](const DayEvents& day) {
    return later(time_of(day[columns.first]), time_of(day[columns.last]));
  };
}

OnDay set_all_over(const PartColumns& columns) {
  return last_of(columns, [](const ColumnEvents& e) { return e.final_set_s; });
}

/// As held_until_set, for each day.
OnDay held(Operation operation, const OnDay& ready, const PartColumns& columns) {
  return [operation, ready, set = set_all_over(columns)](const DayEvents& day) {
    return held_until_set(operation, ready(day), set(day));
  };
}

/// Applies the changes on the ensemble's days to the plan's times.
class BandMaker {
 public:
  explicit BandMaker(const Ensemble& ensemble) : ensemble_(ensemble) {}

  std::optional<TimeBand> band(const std::optional<UtcTime>& planned, const OnDay& on) const {
    const auto base_s = on(ensemble_.planned);
    std::vector<Weighted> moves;
    for (std::size_t i = 0; i < ensemble_.days.size(); ++i) {
      const auto at_s = on(ensemble_.days[i]);
      moves.push_back({at_s ? std::optional(*at_s - base_s.value_or(0.0)) : std::nullopt,
                       ensemble_.weights[i]});
    }
    TimeBand band;
    band.fraction = fraction_that_comes(moves);
    if (!planned || !base_s) return band.fraction > 0.0 ? std::optional(band) : std::nullopt;
    const auto at = [&](double fraction) {
      return moved(*planned, weighted_quantile(moves, fraction));
    };
    band.early = at(early_fraction);
    band.likely = at(likely_fraction);
    band.late = at(late_fraction);
    return band;
  }

  void put(OperationWindow& window, const PartColumns& columns) const {
    const Operation operation = window.operation;
    const TimeOf opens = [operation](const ColumnEvents& e) { return e.window(operation).opens_s; };
    const TimeOf closes = [operation](const ColumnEvents& e) {
      return e.window(operation).closes_s;
    };
    window.opens_band = band(window.opens, held(operation, first_of(columns, opens), columns));
    window.all_over_band =
        band(window.open_all_over, held(operation, last_of(columns, opens), columns));
    if (!window.is_never()) {
      window.closes_band = band(window.closes, first_of(columns, closes));
    }
  }

  void put(PartPlan& part, const PartColumns& columns) const {
    for (OperationWindow& window : part.windows) put(window, columns);
    part.sheen_band = band(part.sheen_gone,
                           last_of(columns, [](const ColumnEvents& e) { return e.sheen_gone_s; }));
    part.initial_band = band(
        part.initial_set, first_of(columns, [](const ColumnEvents& e) { return e.initial_set_s; }));
    part.final_band = band(part.final_set, set_all_over(columns));
  }

  void put(SawPlan& saw, const ZoneColumns& zone) const {
    const PartColumns& columns = zone.whole;
    const Operation operation =
        saw.kind == SawKind::early_entry ? Operation::saw_dry : Operation::saw_wet;
    saw.opens_band = band(saw.opens, first_of(columns, [operation](const ColumnEvents& e) {
                            return e.window(operation).opens_s;
                          }));
    saw.latest_band =
        band(saw.latest, first_of({zone.saw_limit, columns.first}, [](const ColumnEvents& e) {
               return earlier(e.stress_limit_s, e.surface_limit_s);
             }));
  }

 private:
  static std::optional<UtcTime> moved(UtcTime planned, const std::optional<double>& by_s) {
    if (!by_s) return std::nullopt;
    return after_seconds(planned, *by_s);
  }

  const Ensemble& ensemble_;
};

}  // namespace

DayPlan with_bands(DayPlan plan, const Job& job, const Ensemble& ensemble) {
  if (ensemble.days.empty()) return plan;
  const BandMaker maker(ensemble);
  for (std::size_t i = 0; i < plan.zones.size(); ++i) {
    ZonePlan& zone = plan.zones[i];
    const ZoneColumns& columns = ensemble.zones[i];
    maker.put(zone.whole, columns.whole);
    for (std::size_t k = 0; k < zone.parts.size(); ++k) maker.put(zone.parts[k], columns.parts[k]);
    if (zone.border) maker.put(*zone.border, *columns.border);
    for (std::size_t k = 0; k < zone.faces.size(); ++k) {
      maker.put(zone.faces[k].strip, {columns.faces[k], columns.faces[k]});
    }
    for (SawPlan& saw : zone.saws) maker.put(saw, columns);
  }
  std::vector<Operation> main_work;
  for (const Zone& zone : job.zones) main_work.push_back(main_operation(zone.finish));
  LateDays late = late_days(plan.crew, plan, ensemble);
  plan.crew.late_chances = std::move(late.task_chances);
  plan.crew.lost_chances = std::move(late.lost_chances);
  plan.crew.finish_lost_fraction = late.finish_lost_fraction;
  plan.crew.zone_lost_fractions = std::move(late.zone_lost_fractions);
  plan.frost = frost_days(plan.zones, ensemble);
  add_drawn_cautions(plan.cautions, job, plan, plan.crew.lost_chances, *plan.frost);
  plan.sureness = sureness_of(plan, main_work, ensemble);
  return plan;
}

}  // namespace slabtide
