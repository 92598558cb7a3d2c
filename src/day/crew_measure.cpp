#include "crew_measure.h"

#include <algorithm>
#include <vector>

#include "slabtide/core/units.h"
#include "slabtide/day/cell_times.h"

namespace slabtide {

namespace {

constexpr double seconds_per_minute = 60.0;
constexpr double seconds_per_hour = 3600.0;
constexpr int most_finishers = 16;
/// Under this a zone is not late: the cells' own steps are a minute.
constexpr double late_from_min = 1.0;

/// Of one finisher; stamp, texture, broom, float and trowel from method notes (from memory).
double rate_m2_h(Operation operation) {
  constexpr double stamp_ft2_h = 100.0;
  constexpr double texture_ft2_h = 150.0;
  constexpr double broom_ft2_h = 83.0;
  constexpr double float_ft2_h = 100.0;
  if (operation == Operation::stamp) return m2_from_ft2(stamp_ft2_h);
  if (operation == Operation::texture) return m2_from_ft2(texture_ft2_h);
  if (operation == Operation::broom) return m2_from_ft2(broom_ft2_h);
  return m2_from_ft2(float_ft2_h);
}

struct WorkCell {
  double opens_s = 0.0;
  std::optional<double> closes_s;
  double area_m2 = 0.0;
};

struct WorkZone {
  Operation operation = Operation::broom;
  std::vector<WorkCell> cells;
};

WorkZone work_of(const Zone& zone, const ZoneRun& zone_run, const PourRun& run,
                 const Practice& practice) {
  WorkZone work{main_operation(zone.finish), {}};
  for (const CellRun& cell : zone_run.cells) {
    const CellWindow window =
        cell_window(run.histories[cell.history], practice.window(work.operation), practice);
    if (window.opens_s) work.cells.push_back({*window.opens_s, window.closes_s, cell.cell.area_m2});
  }
  std::stable_sort(work.cells.begin(), work.cells.end(),
                   [](const WorkCell& a, const WorkCell& b) { return a.opens_s < b.opens_s; });
  return work;
}

struct Outcome {
  double late_min = 0.0;
  double finish_s = 0.0;
};

Outcome work_through(const std::vector<WorkZone>& zones, int finishers) {
  Outcome outcome;
  for (const WorkZone& zone : zones) {
    const double m2_s = finishers * rate_m2_h(zone.operation) / seconds_per_hour;
    double late_s = 0.0;
    for (const WorkCell& cell : zone.cells) {
      outcome.finish_s = std::max(outcome.finish_s, cell.opens_s) + cell.area_m2 / m2_s;
      if (cell.closes_s) late_s = std::max(late_s, outcome.finish_s - *cell.closes_s);
    }
    const double late_min = late_s / seconds_per_minute;
    if (late_min > late_from_min) outcome.late_min += late_min;
  }
  return outcome;
}

}  // namespace

CrewMeasure measure_crew(const Job& job, const PourRun& run, const DayPlan& /*plan*/,
                         const Practice& practice) {
  std::vector<WorkZone> zones;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    WorkZone work = work_of(job.zones[i], run.zones[i], run, practice);
    if (!work.cells.empty()) zones.push_back(std::move(work));
  }
  std::stable_sort(zones.begin(), zones.end(), [](const WorkZone& a, const WorkZone& b) {
    return a.cells.front().opens_s < b.cells.front().opens_s;
  });
  CrewMeasure measure;
  if (zones.empty()) return measure;
  const Outcome own = work_through(zones, job.crew.finishers);
  measure.minutes_late = own.late_min;
  measure.last_finish = run.at(own.finish_s);
  const double on_site_s = seconds_between(job.pour.start, *measure.last_finish) +
                           job.crew.arrive_before_min * seconds_per_minute;
  measure.crew_hours = job.crew.finishers * on_site_s / seconds_per_hour;
  for (int n = 1; n <= most_finishers && !measure.smallest_crew; ++n) {
    if (work_through(zones, n).late_min <= 0.0) measure.smallest_crew = n;
  }
  return measure;
}

}  // namespace slabtide
