#include "slabtide/day/uncertainty/bands.h"

#include <algorithm>
#include <functional>

#include "doubt.h"
#include "slabtide/day/uncertainty/late_days.h"

namespace slabtide {

namespace {

constexpr double early_share = 0.1;
constexpr double likely_share = 0.5;
constexpr double late_share = 0.9;

using TimeOf = std::function<std::optional<double>(const ColumnEvents&)>;

std::optional<double> earlier(const std::optional<double>& a, const std::optional<double>& b) {
  if (!a || !b) return a ? a : b;
  return std::min(*a, *b);
}

std::optional<double> later(const std::optional<double>& a, const std::optional<double>& b) {
  if (!a || !b) return std::nullopt;
  return std::max(*a, *b);
}

/// Which of a part's two columns has the time: on another day the last may be the first.
enum class Which { first, last };

/// Moves the plan's times to the ensemble's days.
class BandMaker {
 public:
  explicit BandMaker(const Ensemble& ensemble) : ensemble_(ensemble) {}

  std::optional<TimeBand> band(const std::optional<UtcTime>& planned, const PartColumns& columns,
                               Which which, const TimeOf& time_of) const {
    const auto on = [&](const DayEvents& day) {
      const auto first = time_of(day[columns.first]);
      const auto last = time_of(day[columns.last]);
      return which == Which::first ? earlier(first, last) : later(first, last);
    };
    const auto base_s = on(ensemble_.planned);
    std::vector<Weighted> moves;
    for (std::size_t i = 0; i < ensemble_.days.size(); ++i) {
      const auto at_s = on(ensemble_.days[i]);
      moves.push_back({at_s ? std::optional(*at_s - base_s.value_or(0.0)) : std::nullopt,
                       ensemble_.weights[i]});
    }
    TimeBand band;
    band.share = share_that_comes(moves);
    if (!planned || !base_s) return band.share > 0.0 ? std::optional(band) : std::nullopt;
    const auto at = [&](double share) { return moved(*planned, weighted_quantile(moves, share)); };
    band.early = at(early_share);
    band.likely = at(likely_share);
    band.late = at(late_share);
    return band;
  }

  void put(OperationWindow& window, const PartColumns& columns) const {
    const Operation operation = window.operation;
    const TimeOf opens = [operation](const ColumnEvents& e) { return e.window(operation).opens_s; };
    const TimeOf closes = [operation](const ColumnEvents& e) {
      return e.window(operation).closes_s;
    };
    window.opens_band = band(window.opens, columns, Which::first, opens);
    window.all_over_band = band(window.open_all_over, columns, Which::last, opens);
    if (!window.is_never()) {
      window.closes_band = band(window.closes, columns, Which::first, closes);
    }
  }

  void put(PartPlan& part, const PartColumns& columns) const {
    for (OperationWindow& window : part.windows) put(window, columns);
    part.sheen_band = band(part.sheen_gone, columns, Which::last,
                           [](const ColumnEvents& e) { return e.sheen_gone_s; });
    part.initial_band = band(part.initial_set, columns, Which::first,
                             [](const ColumnEvents& e) { return e.initial_set_s; });
    part.final_band = band(part.final_set, columns, Which::last,
                           [](const ColumnEvents& e) { return e.final_set_s; });
  }

  void put(SawPlan& saw, const ZoneColumns& zone) const {
    const PartColumns& columns = zone.whole;
    const Operation operation =
        saw.kind == SawKind::early_entry ? Operation::saw_dry : Operation::saw_wet;
    saw.opens_band = band(saw.opens, columns, Which::first, [operation](const ColumnEvents& e) {
      return e.window(operation).opens_s;
    });
    saw.latest_band =
        band(saw.latest, {zone.saw_limit, columns.first}, Which::first,
             [](const ColumnEvents& e) { return earlier(e.stress_limit_s, e.surface_limit_s); });
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
  plan.crew.late_chances = late_days(plan.crew, plan, ensemble).task_chances;
  plan.sureness = sureness_of(plan, main_work, ensemble);
  return plan;
}

}  // namespace slabtide
