#include "slabtide/day/compare/choice_cost.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>
#include <vector>

#include <fmt/format.h>

#include "admixture_change.h"
#include "day_choices.h"
#include "job/geometry/zone_geometry.h"
#include "job/model/wording.h"
#include "slab/mix/mix_temperature.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

// How much trouble each change is relative to the others (all ours): an hour earlier or later is
// the least, then anything put up by hand, then another worker, then changes to the concrete.
constexpr double change_trouble = 0.5;  // any at all: the plant and the crew hear of it again
constexpr double start_trouble_per_h = 0.4;
constexpr double lights_trouble = 1.5;  // to begin before sunrise
constexpr double order_trouble = 1.0;
constexpr double saw_trouble = 1.5;
constexpr double windbreak_trouble = 1.5;
// Shade, per zone: posts, lines and stakes, and the cloth: two people an hour for 200 ft² (common
// practice, no source), so that 600 ft² are more than another worker for the day.
constexpr double shade_trouble = 1.5;
constexpr double shade_trouble_per_m2 = 0.07;
// A film: the jug, for the sprayer that is on the truck anyway, and somebody to spray after the
// bull float and again after each pass (ACI 302.1R, from memory), some three times at 2000 ft²/h,
// an hour and a half for 1000 ft² (common practice, no source). An hour as with the shade.
constexpr double film_trouble = 0.5;
constexpr double film_trouble_per_m2 = 0.01;
constexpr double cover_trouble = 1.5;  // blankets or plastic to fetch, lay and take away
constexpr double thicker_trouble = 0.5;
constexpr double ice_trouble_per_k = 0.5;        // chilled water or ice
constexpr double hot_water_trouble_per_k = 0.2;  // a plant heats its water all winter
constexpr double short_load_trouble = 1.5;       // what it charges
constexpr double spacing_trouble = 0.5;
/// An edge that waits for its truck within a slab: a cold joint, or a change of shade, threatens.
constexpr double open_edge_trouble = 3.0;
constexpr double finisher_trouble = 3.0;
constexpr double load_trouble = 1.0;       // one more truck
constexpr double admixture_trouble = 2.0;  // for any change of the amount ordered
/// Added according to the amount: per mL/100 kg in all of the concrete.
constexpr double dose_trouble_per_ml_100kg = 0.005;

/// Smaller differences are rounding.
constexpr double nothing = 1e-6;

const AdmixtureUse* find_use(const std::vector<AdmixtureUse>& uses, AdmixtureKind kind) {
  const auto found = std::find_if(uses.begin(), uses.end(),
                                  [kind](const AdmixtureUse& use) { return use.kind == kind; });
  return found == uses.end() ? nullptr : &*found;
}

/// "retarder 2 fl oz/cwt x 564 lb/yd³ x 6.5 yd³ = 74 fl oz", for all uses of one kind.
std::string use_words(const AdmixtureUse& use, const Job& job) {
  const std::string name(admixture_words(use.kind));
  if (use.dose_is_unknown) {
    return fmt::format("{} in {} by the supplier's own dose", name,
                       volume_words(use.concrete_m3, job.units));
  }
  constexpr double hundred = 100.0;
  Admixture mean;
  mean.kind = use.kind;
  const double dose = hundred * use.amount / (job.mix.cementitious_kg_m3 * use.concrete_m3);
  if (use.kind == AdmixtureKind::accelerator_chloride) {
    mean.dose_percent = dose;
  } else {
    mean.dose_ml_100kg = dose;
  }
  return fmt::format("{} {} x {} x {} = {}", name, dose_words(mean, job.units),
                     content_words(job.mix.cementitious_kg_m3, job.units),
                     volume_words(use.concrete_m3, job.units),
                     amount_words(use.amount, use.kind, job.units));
}

/// Adds to the cost the admixtures that differ from those ordered.
class Bill {
 public:
  Bill(const Job& ordered, const Job& changed) : ordered_(ordered), changed_(changed) {}

  void admixtures(const OrderPlan& before, const OrderPlan& after) {
    const auto was = admixture_use(ordered_, before);
    const auto is = admixture_use(changed_, after);
    for (const AdmixtureUse& use : is) {
      const AdmixtureUse* old = find_use(was, use.kind);
      if (old != nullptr && same(*old, use)) continue;
      const double old_amount = old == nullptr ? 0.0 : old->amount;
      charge_admixture(std::abs(use.amount - old_amount), after.ordered_m3);
      std::string words = use_words(use, changed_);
      if (old_amount > 0.0) {
        words +=
            fmt::format(", of which {} is already ordered",
                        amount_words(std::min(old_amount, use.amount), use.kind, changed_.units));
      }
      say(std::move(words));
    }
    for (const AdmixtureUse& old : was) {
      if (find_use(is, old.kind) != nullptr) continue;
      charge_admixture(old.amount, after.ordered_m3);
      say(fmt::format("no {}, which saves {}", admixture_words(old.kind),
                      amount_words(old.amount, old.kind, changed_.units)));
    }
  }

  void loads(const OrderPlan& before, const OrderPlan& after) {
    const auto more = static_cast<int>(after.loads.size()) - static_cast<int>(before.loads.size());
    if (changed_.order.truck_spacing_min != ordered_.order.truck_spacing_min) {
      cost_.disturbance += spacing_trouble;
      if (has_open_edge(after)) cost_.disturbance += open_edge_trouble;
    }
    if (more == 0) return;
    cost_.disturbance += load_trouble * std::abs(more);
    cost_.disturbance += short_load_trouble * std::max(0, short_loads(after) - short_loads(before));
    say(fmt::format("{} truck{} instead of {}{}", after.loads.size(),
                    after.loads.size() == 1 ? "" : "s", before.loads.size(), short_words(after)));
  }

  void hours() {
    const double hours =
        std::abs(seconds_between(ordered_.pour.start, changed_.pour.start)) / seconds_per_hour;
    cost_.disturbance += start_trouble_per_h * hours;
    if (starts_in_the_dark(changed_) && !starts_in_the_dark(ordered_)) {
      cost_.disturbance += lights_trouble;
    }
    if (ordered_.pour.placing_sequence != changed_.pour.placing_sequence)
      cost_.disturbance += order_trouble;
  }

  void hands() {
    const int more = changed_.crew.finishers - ordered_.crew.finishers;
    cost_.disturbance += finisher_trouble * std::abs(more);
    if (more == 0) return;
    say(fmt::format("{} finisher{} {} for the day", std::abs(more), std::abs(more) == 1 ? "" : "s",
                    more > 0 ? "more" : "fewer"));
  }

  void shelter() {
    for (std::size_t i = 0; i < changed_.zones.size(); ++i) {
      if (changed_.zones[i].shaded == ordered_.zones[i].shaded) continue;
      cost_.disturbance +=
          shade_trouble + shade_trouble_per_m2 * area_m2(changed_.zones[i].outline);
      say(fmt::format("shade over the {}", changed_.zones[i].name));
    }
    if (changed_.site.measured_wind_ratio != ordered_.site.measured_wind_ratio) {
      cost_.disturbance += windbreak_trouble;
      say("a windbreak");
    }
  }

  void film_and_cover() {
    if (changed_.pour.evaporation_film && !ordered_.pour.evaporation_film) {
      cost_.disturbance += film_trouble + film_trouble_per_m2 * all_zones_m2();
      say("an evaporation film and a sprayer");
    }
    const bool other = changed_.pour.curing != ordered_.pour.curing;
    const bool thicker = changed_.pour.curing_blanket_m2k_w > ordered_.pour.curing_blanket_m2k_w;
    if (!other && !thicker) return;
    cost_.disturbance += cover_trouble;
    if (thicker) cost_.disturbance += thicker_trouble * *changed_.pour.curing_blanket_m2k_w;
    say(fmt::format("{} for {}",
                    changed_.pour.curing == CuringKind::plastic ? "plastic" : "blankets",
                    area_words(all_zones_m2(), changed_.units)));
  }

  void temperature() {
    const double by_k =
        discharge_temperature_c(changed_.mix) - discharge_temperature_c(ordered_.mix);
    if (std::abs(by_k) < nothing) return;
    const bool cooler = by_k < 0.0;
    cost_.disturbance += std::abs(by_k) * (cooler ? ice_trouble_per_k : hot_water_trouble_per_k);
    say(cooler ? "chilled water or ice at the plant" : "hot water at the plant");
  }

  void saws() {
    if (changed_.pour.saws == ordered_.pour.saws) return;
    cost_.disturbance += saw_trouble;
    if (changed_.pour.saws.size() > ordered_.pour.saws.size()) say("saw rental");
  }

  ChoiceCost take() {
    if (cost_.disturbance > 0.0) cost_.disturbance += change_trouble;
    return std::move(cost_);
  }

 private:
  static bool same(const AdmixtureUse& a, const AdmixtureUse& b) {
    return a.dose_is_unknown == b.dose_is_unknown && std::abs(a.amount - b.amount) < nothing &&
           std::abs(a.concrete_m3 - b.concrete_m3) < nothing;
  }

  double all_zones_m2() const {
    return std::accumulate(
        changed_.zones.begin(), changed_.zones.end(), 0.0,
        [](double sum_m2, const Zone& zone) { return sum_m2 + area_m2(zone.outline); });
  }

  static int short_loads(const OrderPlan& order) {
    return static_cast<int>(std::count_if(order.loads.begin(), order.loads.end(),
                                          [](const Load& load) { return load.is_short; }));
  }

  /// Whether a zone waits, half placed, for the next truck.
  static bool has_open_edge(const OrderPlan& order) {
    for (std::size_t i = 1; i < order.loads.size(); ++i) {
      const Load& before = order.loads[i - 1];
      const bool within = before.fractions.back().to_fraction < 1.0 - nothing;
      if (within && order.loads[i].starts > after_seconds(before.empty, seconds_per_minute)) {
        return true;
      }
    }
    return false;
  }

  std::string short_words(const OrderPlan& after) const {
    const int shorts = short_loads(after);
    return shorts == 0 ? std::string()
                       : fmt::format(", {} of them short (most plants charge for it)", shorts);
  }

  void charge_admixture(double amount, double concrete_m3) {
    constexpr double hundred = 100.0;
    const double dose = hundred * amount / (changed_.mix.cementitious_kg_m3 * concrete_m3);
    cost_.disturbance += admixture_trouble + dose_trouble_per_ml_100kg * dose;
  }

  void say(std::string words) {
    cost_.words += (cost_.words.empty() ? "" : "; ") + std::move(words);
  }

  const Job& ordered_;
  const Job& changed_;
  ChoiceCost cost_;
};

}  // namespace

ChoiceCost cost_of(const Job& ordered, const OrderPlan& ordered_loads, const Job& changed,
                   const OrderPlan& changed_loads) {
  Bill bill(ordered, changed);
  bill.admixtures(ordered_loads, changed_loads);
  bill.loads(ordered_loads, changed_loads);
  bill.hours();
  bill.hands();
  bill.shelter();
  bill.film_and_cover();
  bill.temperature();
  bill.saws();
  return bill.take();
}

}  // namespace slabtide
