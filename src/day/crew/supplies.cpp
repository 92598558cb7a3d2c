#include "slabtide/day/crew/supplies.h"

#include <algorithm>
#include <array>

#include "job/model/covers.h"

namespace slabtide {

namespace {

struct Kind {
  std::string_view id;
  std::string_view words;
  SupplyUnit unit;
};

constexpr std::array<Kind, 10> kinds{{{"concrete", "concrete", SupplyUnit::m3},
                                      {"release_powder", "powder release agent", SupplyUnit::kg},
                                      {"release_liquid", "liquid release agent", SupplyUnit::l},
                                      {"surface_retarder", "surface retarder", SupplyUnit::l},
                                      {"salt", "rock salt", SupplyUnit::kg},
                                      {"curing_compound", "curing compound", SupplyUnit::l},
                                      {"cure_and_seal", "cure-and-seal", SupplyUnit::l},
                                      {"sealer", "sealer", SupplyUnit::l},
                                      {"plastic", "plastic sheet", SupplyUnit::m2},
                                      {"blankets", "curing blankets", SupplyUnit::m2}}};

const Kind& entry(SupplyKind kind) { return kinds[static_cast<std::size_t>(kind)]; }

/// Of the field and the border strip, what has a finish that `takes` it.
template <class Takes>
double area_that_m2(const Takes& takes, const Zone& zone, const ZonePlan& plan) {
  double area_m2 = takes(zone.finish) ? plan.whole.area_m2 : 0.0;
  if (plan.border && takes(zone.border->finish)) area_m2 += plan.border->area_m2;
  return area_m2;
}

bool takes_surface_retarder(Finish finish) { return finish == Finish::exposed_aggregate; }
bool takes_salt(Finish finish) { return finish == Finish::salt; }

/// Adds up an area over the zones.
class Area {
 public:
  void add(const std::string& zone, double area_m2) {
    if (!(area_m2 > 0.0)) return;
    area_m2_ += area_m2;
    zones_.push_back(zone);
  }

  void supply(std::vector<Supply>& list, SupplyKind kind, double amount_per_m2) const {
    if (area_m2_ > 0.0) list.push_back({kind, area_m2_ * amount_per_m2, area_m2_, zones_});
  }

 private:
  double area_m2_ = 0.0;
  std::vector<std::string> zones_;
};

/// Whether a zone is covered with this kind of cover.
bool is_covered_with(CuringKind kind, const Zone& zone, const Job& job) {
  if (job.pour.curing == kind) return true;
  const std::vector<Cover> covers = covers_on(zone, job.pour);
  return std::any_of(covers.begin(), covers.end(),
                     [kind](const Cover& cover) { return cover.kind == kind; });
}

}  // namespace

std::string_view supply_id(SupplyKind kind) { return entry(kind).id; }

std::string_view supply_words(SupplyKind kind) { return entry(kind).words; }

SupplyUnit supply_unit(SupplyKind kind) { return entry(kind).unit; }

std::vector<Supply> take_along(const Job& job, const OrderPlan& order,
                               const std::vector<ZonePlan>& zones, const Practice& practice) {
  Area released;
  Area retarded;
  Area salted;
  Area sealed;
  Area sprayed;
  Area under_plastic;
  Area under_blankets;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    const Zone& zone = job.zones[i];
    const double area_m2 = zones[i].area_m2;
    released.add(zone.name, area_that_m2(takes_release, zone, zones[i]));
    retarded.add(zone.name, area_that_m2(takes_surface_retarder, zone, zones[i]));
    salted.add(zone.name, area_that_m2(takes_salt, zone, zones[i]));
    if (is_decorative(zone) && job.finish_work.sealer == SealerKind::sealer)
      sealed.add(zone.name, area_m2);
    if (job.pour.curing == CuringKind::film) sprayed.add(zone.name, area_m2);
    if (is_covered_with(CuringKind::plastic, zone, job)) under_plastic.add(zone.name, area_m2);
    if (is_covered_with(CuringKind::blanket, zone, job)) under_blankets.add(zone.name, area_m2);
  }
  const Coverage& coverage = practice.crew.coverage;
  std::vector<Supply> list;
  list.push_back({SupplyKind::concrete, order.sold_m3, 0.0, job.pour.placing_sequence});
  if (job.finish_work.release == ReleaseKind::powder) {
    released.supply(list, SupplyKind::release_powder, coverage.release_powder_kg_m2);
  } else {
    released.supply(list, SupplyKind::release_liquid, coverage.release_liquid_l_m2);
  }
  retarded.supply(list, SupplyKind::surface_retarder, coverage.surface_retarder_l_m2);
  salted.supply(list, SupplyKind::salt, coverage.salt_kg_m2);
  if (job.finish_work.sealer == SealerKind::cure_and_seal) {
    sprayed.supply(list, SupplyKind::cure_and_seal, coverage.curing_compound_l_m2);
  } else {
    sprayed.supply(list, SupplyKind::curing_compound, coverage.curing_compound_l_m2);
  }
  sealed.supply(list, SupplyKind::sealer, coverage.sealer_l_m2 * coverage.sealer_coats);
  under_plastic.supply(list, SupplyKind::plastic, coverage.cover_factor);
  under_blankets.supply(list, SupplyKind::blankets, coverage.cover_factor);
  return list;
}

}  // namespace slabtide
