#include "slabtide/day/field/check_back.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "slab/process/setting.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/windows/saw_plan.h"
#include "slabtide/weather/air/moist_air.h"

namespace slabtide {

namespace {

constexpr double half_the_area = 0.5;

class Checking {
 public:
  Checking(const Job& job, const PourRun& run, const DayPlan& plan, const Practice& practice)
      : job_(job), run_(run), plan_(plan), practice_(practice) {}

  CheckedObservation check(const Observation& reading, std::size_t index) const {
    CheckedObservation checked;
    checked.reading = index;
    if (observation_measure(reading.kind) != ObservationMeasure::nothing) {
      checked.planned_value = planned_value(reading);
    } else if (reading.kind != ObservationKind::crack) {
      checked.planned = planned_time(reading);
    }
    return checked;
  }

 private:
  std::optional<UtcTime> planned_time(const Observation& reading) const {
    const PlaceId place = place_of(reading, plan_);
    const ZoneRun& zone = run_.zones[place.zone];
    if (reading.kind == ObservationKind::placed) return zone.placing.start;
    std::vector<TimedArea> areas;
    for (const std::size_t i : cells_at(place, plan_)) {
      const CellRun& cell = zone.cells[i];
      areas.push_back({event_s(reading.kind, run_.histories[cell.history]), cell.cell.area_m2});
    }
    const auto at_s = time_of_fraction(std::move(areas), half_the_area);
    if (!at_s) return std::nullopt;
    return run_.at(*at_s);
  }

  std::optional<double> event_s(ObservationKind kind, const ColumnHistory& history) const {
    if (kind == ObservationKind::sheen_gone) {
      const auto gone = sheen_gone(history, practice_);
      return gone ? std::optional(gone->at_s) : std::nullopt;
    }
    if (kind == ObservationKind::sawed) {
      return saw_opens_s(saw_used(), history, job_.mix.aggregate, practice_);
    }
    const bool deep = kind == ObservationKind::initial_set;
    return first_reaches(history.time_s,
                         deep ? history.resistance_middle_psi : history.resistance_work_psi,
                         setting_psi(kind, practice_).value());
  }

  /// The early-entry saw, unless only a wet saw is on hand.
  SawKind saw_used() const {
    const auto& saws = job_.pour.saws;
    const bool only_wet =
        !saws.empty() && std::find(saws.begin(), saws.end(), SawKind::early_entry) == saws.end();
    return only_wet ? SawKind::wet : SawKind::early_entry;
  }

  std::optional<double> planned_value(const Observation& reading) const {
    const double at_s = seconds_between(run_.weather.grid.start, reading.at);
    if (reading.kind == ObservationKind::concrete_temperature) {
      const std::size_t zone = reading.zone.empty() ? 0 : place_of(reading, plan_).zone;
      return run_.mix_of(run_.zones[zone]).discharge_c;
    }
    if (reading.kind == ObservationKind::surface_temperature) return surface_c(reading, at_s);
    const SiteWeather& weather = run_.weather;
    if (at_s < 0.0 || at_s > weather.grid.end_s()) return std::nullopt;
    const std::size_t k = weather.grid.index_at(at_s + 0.5 * weather.grid.step_s);
    if (reading.kind == ObservationKind::air_temperature) return weather.air_c[k];
    if (reading.kind == ObservationKind::wind) return weather.wind_slab_m_s[k];
    return vapour_pressure_pa(weather.dew_point_c[k]) / saturation_pressure_pa(weather.air_c[k]);
  }

  std::optional<double> surface_c(const Observation& reading, double at_s) const {
    const PlaceId place = place_of(reading, plan_);
    double sum = 0.0;
    double area_m2 = 0.0;
    for (const std::size_t i : cells_at(place, plan_)) {
      const CellRun& cell = run_.zones[place.zone].cells[i];
      const ColumnHistory& history = run_.histories[cell.history];
      if (at_s < history.time_s.front() || at_s > history.time_s.back()) continue;
      sum += cell.cell.area_m2 * value_at(history.time_s, history.surface_c, at_s);
      area_m2 += cell.cell.area_m2;
    }
    if (area_m2 <= 0.0) return std::nullopt;
    return sum / area_m2;
  }

  const Job& job_;
  const PourRun& run_;
  const DayPlan& plan_;
  const Practice& practice_;
};

}  // namespace

std::optional<double> CheckedObservation::late_min(const Journal& journal) const {
  if (!planned) return std::nullopt;
  return seconds_between(*planned, journal.readings[reading].at) / seconds_per_minute;
}

PlaceId place_of(const Observation& reading, const DayPlan& plan) {
  const auto zone =
      std::find_if(plan.zones.begin(), plan.zones.end(),
                   [&reading](const ZonePlan& one) { return one.name == reading.zone; });
  if (zone == plan.zones.end()) throw std::invalid_argument("reading: the plan has no such zone");
  return {static_cast<std::size_t>(zone - plan.zones.begin()),
          zone->part_id(reading.part_id.empty() ? reading.part : reading.part_id)};
}

const std::vector<std::size_t>& cells_at(const PlaceId& place, const DayPlan& plan) {
  const ZonePlan& zone = plan.zones.at(place.zone);
  const PartPlan* const part = zone.part(place.part);
  return part == nullptr ? zone.whole.cells : part->cells;
}

std::optional<double> setting_psi(ObservationKind kind, const Practice& practice) {
  switch (kind) {
    case ObservationKind::thumbprint:
      return practice.window(Operation::stamp).opens_psi;
    case ObservationKind::print_firm:
      return practice.window(Operation::stamp).closes_psi;
    case ObservationKind::edge_held:
      return practice.window(Operation::detail_edge).opens_psi;
    case ObservationKind::initial_set:
      return initial_set_psi;
    default:
      return std::nullopt;
  }
}

std::vector<CheckedObservation> check_back(const Journal& journal, const Job& job,
                                           const PourRun& run, const DayPlan& plan,
                                           const Practice& practice) {
  const Checking checking(job, run, plan, practice);
  std::vector<CheckedObservation> checked;
  for (std::size_t i = 0; i < journal.readings.size(); ++i) {
    checked.push_back(checking.check(journal.readings[i], i));
  }
  return checked;
}

}  // namespace slabtide
