#include "csv_plan.h"

#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "csv_text.h"
#include "report/words/decimals.h"
#include "report/words/validate_facts.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// What a row contains besides the window.
struct Place {
  std::string zone;
  std::string part;
  Finish finish = Finish::broom;
  std::optional<double> area_m2;  ///< absent for a form
};

/// What every table of the program's own begins with, in all its versions.
std::string heading_start(bool us) {
  return us ? "zone,part,finish,area_ft2,operation," : "zone,part,finish,area_m2,operation,";
}

/// Local columns are as a spreadsheet reads dates and times; the others are instants.
std::string heading(bool us) {
  return heading_start(us) + csv_record({"opens_local", "all_over_local", "closes_local", "opens",
                                         "open_all_over", "closes", "open_min", "opens_early",
                                         "opens_late", "closes_early", "closes_late", "note"});
}

class PlanTable {
 public:
  explicit PlanTable(const PlannedPour& facts) : facts_(facts) {}

  std::string text() {
    const bool us = facts_.job.units == UnitSystem::us;
    text_ = std::string(csv_utf8_mark) + heading(us);
    for (std::size_t i = 0; i < facts_.plan.zones.size(); ++i) add_zone(i);
    return std::move(text_);
  }

 private:
  std::string time(const std::optional<UtcTime>& at) const {
    return at ? iso8601_minute(*at, facts_.job.site.time_zone) : std::string();
  }

  /// "2026-05-14 10:55", in the site's time.
  std::string local(const std::optional<UtcTime>& at) const {
    return at ? csv_local(*at, facts_.job.site.time_zone) : std::string();
  }

  std::string early(const std::optional<TimeBand>& band) const {
    return band ? local(band->early) : std::string();
  }
  std::string late(const std::optional<TimeBand>& band) const {
    return band ? local(band->late) : std::string();
  }

  std::string area(const std::optional<double>& area_m2) const {
    if (!area_m2) return {};
    const bool us = facts_.job.units == UnitSystem::us;
    return fmt::format("{:.2f}", us ? ft2_from_m2(*area_m2) : *area_m2);
  }

  void add_row(const Place& place, const OperationWindow& window) {
    const double minutes = window.minutes().value_or(0.0);
    text_ +=
        csv_record({csv_safe(place.zone), csv_safe(place.part), finish_words(place.finish),
                    area(place.area_m2), std::string(operation_words(window.operation)),
                    local(window.opens), local(window.open_all_over), local(window.closes),
                    time(window.opens), time(window.open_all_over), time(window.closes),
                    minutes > 0.0 ? fixed_words(minutes) : std::string(), early(window.opens_band),
                    late(window.opens_band), early(window.closes_band), late(window.closes_band),
                    csv_safe(window.note)});
  }

  void add_part(const ZonePlan& zone, const PartPlan& part, Finish finish) {
    for (const OperationWindow& window : part.windows) {
      add_row({zone.name, part.name, finish, part.area_m2}, window);
    }
  }

  void add_zone(std::size_t which) {
    const ZonePlan& zone = facts_.plan.zones[which];
    const Zone& described = facts_.job.zones[which];
    if (zone.parts.empty()) add_part(zone, zone.whole, described.finish);
    for (const PartPlan& part : zone.parts) add_part(zone, part, described.finish);
    if (zone.border) add_part(zone, *zone.border, described.border->finish);
    for (const FacePlan& face : zone.faces) {
      add_row({zone.name, face.name, described.finish, std::nullopt}, face.strip);
    }
    for (const SawPlan& saw : zone.saws) {
      add_row({zone.name, {}, described.finish, zone.area_m2}, window_of(saw));
    }
  }

  const PlannedPour& facts_;
  std::string text_;
};

}  // namespace

std::string csv_plan(const PlannedPour& facts) {
  validate(facts);
  return PlanTable(facts).text();
}

bool is_csv_plan(std::string_view text) {
  if (text.starts_with(csv_utf8_mark)) text.remove_prefix(csv_utf8_mark.size());
  return text.starts_with(heading_start(true)) || text.starts_with(heading_start(false));
}

}  // namespace slabtide
