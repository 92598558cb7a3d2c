#include "validate_run.h"

#include <algorithm>

#include "job/checks/field_checks.h"

namespace slabtide {

namespace {

void check_load(const FieldPath& path, const Load& load, std::size_t zones) {
  path.at("shares").require(!load.fractions.empty(), "there is none");
  for (const UtcTime time : {load.batched, load.arrives, load.starts, load.empty}) {
    path.require(!time.is_special(), "is not on a date and time");
  }
  for (const LoadShare& fraction : load.fractions) {
    path.at("shares").require(fraction.zone < zones, "is of a zone that is not there");
  }
}

void check_order(const FieldPath& path, const OrderPlan& order, std::size_t zones) {
  path.at("placings").require(order.placings.size() == zones, "is not of this job's zones");
  path.at("loads").require(!order.loads.empty(), "there is none");
  for (std::size_t i = 0; i < order.loads.size(); ++i) {
    check_load(path.at("loads", i), order.loads[i], zones);
  }
}

void check_zone(const FieldPath& path, const ZoneRun& zone, const Zone& described,
                const PourRun& run) {
  path.require(!zone.cells.empty(), "has no cells");
  path.at("faces").require(zone.faces.size() == described.faces.size(), "is not of this zone");
  path.at("mix").require(zone.mix < run.mixes.size(), "is not there");
  for (const CellRun& cell : zone.cells) {
    path.at("cells").require(cell.mix < run.mixes.size() && cell.history < run.histories.size() &&
                                 cell.exposure < run.exposures.size(),
                             "points to what is not there");
  }
  for (const FaceRun& face : zone.faces) {
    path.at("faces").require(
        face.history < run.histories.size() && face.exposure < run.exposures.size(),
        "points to what is not there");
  }
}

}  // namespace

void validate(const PourRun& run, const Job& job) {
  const FieldPath path("run");
  path.at("zones").require(run.zones.size() == job.zones.size(), "is not of this job's zones");
  check_order(path.at("order"), run.order, job.zones.size());
  path.at("weather.grid")
      .require(run.weather.grid.count > 0 && run.weather.air_c.size() == run.weather.grid.count &&
                   !run.weather.grid.start.is_special(),
               "has no instants, or not those of the weather");
  path.at("columns").require(run.columns.size() == run.histories.size(),
                             "are not as many as histories");
  for (const ColumnHistory& history : run.histories) {
    path.at("histories").require(!history.time_s.empty(), "hold one without an instant");
  }
  for (std::size_t i = 0; i < run.zones.size(); ++i) {
    check_zone(path.at("zones", i), run.zones[i], job.zones[i], run);
  }
}

}  // namespace slabtide
