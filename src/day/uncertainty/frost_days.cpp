#include "frost_days.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "job/model/covers.h"
#include "slabtide/job/model/job_clock.h"
#include "told_loss.h"

namespace slabtide {

namespace {

constexpr double frost_c = 0.0;

double coldest_c(const ZoneColumns& zone, const DayEvents& day) {
  double min_c =
      std::min(day[zone.whole.first].min_young_surface_c, day[zone.whole.last].min_young_surface_c);
  if (zone.border) {
    min_c = std::min({min_c, day[zone.border->first].min_young_surface_c,
                      day[zone.border->last].min_young_surface_c});
  }
  return min_c;
}

/// A zone that is strong from the start has no coldest surface, and none that moves.
bool freezes(const ZonePlan& plan, const ZoneColumns& columns, const DayEvents& planned,
             const DayEvents& day) {
  const double moved_c = coldest_c(columns, day) - coldest_c(columns, planned);
  return std::isfinite(moved_c) && plan.frost.min_surface_c + moved_c <= frost_c;
}

}  // namespace

FrostDays frost_days(const std::vector<ZonePlan>& zones, const Ensemble& ensemble) {
  FrostDays frost{std::vector<double>(zones.size(), 0.0), 0.0};
  for (std::size_t k = 0; k < ensemble.days.size(); ++k) {
    bool any = false;
    for (std::size_t i = 0; i < zones.size(); ++i) {
      if (!freezes(zones[i], ensemble.zones[i], ensemble.planned, ensemble.days[k])) continue;
      frost.zone_fractions[i] += ensemble.weights[k];
      any = true;
    }
    if (any) frost.any_fraction += ensemble.weights[k];
  }
  return frost;
}

std::vector<Caution> frost_cautions(const Job& job, const std::vector<ZonePlan>& zones,
                                    const FrostDays& frost) {
  constexpr double hundred = 100.0;
  std::vector<Caution> cautions;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    const double fraction = frost.zone_fractions[i];
    if (zones[i].frost.at || fraction < told_loss_fraction) continue;
    const UtcTime at = zones[i].frost.coldest_at;
    const bool covered = lies_under_blankets(job.zones[i], job.pour);
    cautions.push_back(
        {"frost_days", "frost may come before it is strong",
         fraction >= lost_too_often_fraction ? CautionLevel::stop : CautionLevel::caution,
         loss_of("frost_days"), zones[i].name, at, std::nullopt,
         fmt::format("on {:.0f} days in 100 the surface freezes before it is strong enough, about "
                     "{}{}",
                     hundred * fraction, clock_of(job).time_seen_from(job.pour.date, at),
                     covered ? ", even under its blankets: thicker ones and sooner, or warmer "
                               "concrete"
                             : ": blankets on site, and on well before that, or warmer concrete"),
         "ACI 306R-10, published; the chance is worked out from this plan"});
  }
  return cautions;
}

}  // namespace slabtide
