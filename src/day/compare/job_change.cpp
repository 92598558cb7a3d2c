#include "job_change.h"

#include <algorithm>
#include <iterator>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "admixture_change.h"
#include "job/geometry/placing_sequence.h"
#include "job/model/limits.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/order.h"

namespace slabtide {

namespace {

/// Changes a job as a note says, until something is not possible.
class JobChange {
 public:
  JobChange(Job job, const OptionNote& note, const PlacingRates& rates)
      : note_(note), rates_(rates), job_(std::move(job)) {}

  bool apply() {
    return find_zones() && change_start() && change_order() && change_crew() && change_shelter() &&
           change_concrete() && change_curing() && change_trucks() && change_admixtures();
  }
  Job take() { return std::move(job_); }
  const std::string& fault() const { return fault_; }

 private:
  bool refuse(std::string why) {
    fault_ = std::move(why);
    return false;
  }

  bool find(const std::vector<std::string>& names, std::vector<std::size_t>& found) {
    for (const std::string& name : names) {
      const auto zone = std::find_if(job_.zones.begin(), job_.zones.end(),
                                     [&name](const Zone& z) { return z.name == name; });
      if (zone == job_.zones.end()) return refuse(fmt::format("there is no zone '{}'", name));
      found.push_back(static_cast<std::size_t>(zone - job_.zones.begin()));
    }
    return true;
  }

  bool find_zones() {
    std::vector<std::string> own_truck;
    if (note_.own_truck) own_truck.push_back(note_.own_truck->zone);
    return find(note_.admixture_zones, admixture_zones_) &&
           find(note_.shaded_zones, shaded_zones_) && find(own_truck, own_truck_);
  }

  bool change_start() {
    if (!note_.start_shift_min) return true;
    job_ = started_later(job_, *note_.start_shift_min);
    job_.pour.date = job_.site.time_zone.local_from_utc(job_.pour.start).date();
    if (limits::years.holds(static_cast<double>(job_.pour.date.year()))) return true;
    return refuse("no day so far off can be planned");
  }

  bool change_order() {
    if (note_.placing_sequence.empty()) return true;
    if (!std::is_permutation(note_.placing_sequence.begin(), note_.placing_sequence.end(),
                             job_.pour.placing_sequence.begin(),
                             job_.pour.placing_sequence.end())) {
      return refuse("its zone order does not name every zone once");
    }
    if (const auto early = placed_too_early(note_.placing_sequence, job_.zones)) {
      return refuse(fmt::format("{} comes after {}", early->zone, early->after));
    }
    job_.pour.placing_sequence = note_.placing_sequence;
    return true;
  }

  bool change_crew() {
    if (!note_.finishers) return true;
    if (*note_.finishers < 1) return refuse("somebody must be there");
    if (!limits::crew_sizes.holds(*note_.finishers)) return refuse("no pour has use for that many");
    job_.crew.finishers = *note_.finishers;
    // With fewer the last of the list stay at home.
    auto& hands = job_.crew.hands;
    if (static_cast<int>(hands.size()) > job_.crew.finishers) {
      hands.resize(static_cast<std::size_t>(job_.crew.finishers));
      const bool helpers_alone = std::all_of(hands.begin(), hands.end(),
                                             [](const Hand& hand) { return hand.simple_work; });
      if (helpers_alone) return refuse("nobody is left to finish");
    }
    return true;
  }

  bool change_shelter() {
    for (const std::size_t i : shaded_zones_) job_.zones[i].shaded = true;
    if (note_.wind_ratio) job_.site.measured_wind_ratio = note_.wind_ratio;
    if (note_.evaporation_film) job_.pour.evaporation_film = *note_.evaporation_film;
    for (const SawKind saw : note_.saws) {
      if (std::count(job_.pour.saws.begin(), job_.pour.saws.end(), saw) == 0) {
        job_.pour.saws.push_back(saw);
      }
    }
    return true;
  }

  bool change_concrete() {
    if (!note_.concrete_c) return true;
    if (!limits::discharges_c.holds(*note_.concrete_c)) {
      return refuse("no plant sends concrete that hot or cold");
    }
    job_.mix.temperature = *note_.concrete_c;
    return true;
  }

  bool change_curing() {
    if (note_.curing) job_.pour.curing = *note_.curing;
    if (!note_.curing_blanket_m2k_w) return true;
    job_.pour.curing_blanket_m2k_w = note_.curing_blanket_m2k_w;
    for (Cover& cover : job_.pour.covers) {
      if (cover.kind != CuringKind::blanket) continue;
      cover.resistance_m2k_w = std::max(cover.resistance_m2k_w, *note_.curing_blanket_m2k_w);
    }
    return true;
  }

  bool change_trucks() {
    if (note_.load_size_m3 && !limits::loads_m3.holds(*note_.load_size_m3)) {
      return refuse("no plant sends a load of that size");
    }
    if (note_.load_size_m3) job_.order.load_size_m3 = *note_.load_size_m3;
    if (note_.truck_spacing_min) job_.order.truck_spacing_min = note_.truck_spacing_min;
    if (own_truck_.empty()) return true;
    const std::size_t zone = own_truck_.front();
    if (job_.pour.placing_sequence.front() == job_.zones[zone].name) {
      return refuse("it is placed first, and its truck is the first already");
    }
    if (job_.zones[zone].placed_at) return refuse("it has a set time already");
    job_.zones[zone].placed_at = after_seconds(plan_order(job_, rates_).placings[zone].start,
                                               note_.own_truck->wait_min * seconds_per_minute);
    return true;
  }

  bool change_admixtures() {
    for (const LoadNote& load : note_.loads) put_in_load(load);
    if (!note_.admixtures) return true;
    if (note_.last_loads) return change_last_loads(*note_.last_loads);
    if (!admixture_zones_.empty()) {
      if (!job_.order.loads.empty()) {
        return refuse("loads have admixtures of their own, which override a zone's");
      }
      for (const std::size_t i : admixture_zones_) job_.zones[i].admixtures = *note_.admixtures;
      return true;
    }
    change_all_admixtures(job_, [this](const auto&) { return *note_.admixtures; });
    return true;
  }

  bool change_last_loads(int number) {
    const auto of = static_cast<int>(plan_order(job_, rates_).loads.size());
    if (number < 1 || number > of) {
      return refuse(fmt::format("it wants the last {} loads and there {} {}", number,
                                of == 1 ? "is" : "are", of));
    }
    for (int load = of - number + 1; load <= of; ++load) put_in_load({load, *note_.admixtures});
    return true;
  }

  void put_in_load(const LoadNote& load) {
    std::erase_if(job_.order.loads,
                  [&load](const LoadNote& other) { return other.number == load.number; });
    job_.order.loads.push_back(load);
  }

  const OptionNote& note_;
  const PlacingRates& rates_;
  Job job_;
  std::vector<std::size_t> admixture_zones_;
  std::vector<std::size_t> shaded_zones_;
  std::vector<std::size_t> own_truck_;
  std::string fault_;
};

template <class T>
bool is_set(const std::vector<T>& list) {
  return !list.empty();
}
template <class T>
bool is_set(const std::optional<T>& value) {
  return value.has_value();
}

/// Takes one field of another note; false where both have it.
template <class T>
bool take(T& into, const T& from) {
  if (!is_set(from)) return true;
  if (is_set(into)) return false;
  into = from;
  return true;
}

/// Whether the note says what goes into the concrete, or how it comes.
bool is_of_admixtures(const OptionNote& note) { return note.admixtures || !note.loads.empty(); }
bool is_of_trucks(const OptionNote& note) {
  return note.load_size_m3 || note.truck_spacing_min || note.own_truck;
}

}  // namespace

ChangedJob with_change(const Job& job, const OptionNote& note, const PlacingRates& rates) {
  JobChange change(job, note, rates);
  if (!change.apply()) return {std::nullopt, change.fault()};
  return {change.take(), {}};
}

std::optional<OptionNote> joined_change(const OptionNote& a, const OptionNote& b) {
  if (is_of_admixtures(a) && is_of_admixtures(b)) return std::nullopt;
  // Which loads are the last depends on the trucks.
  if (is_of_trucks(a) && is_of_trucks(b)) return std::nullopt;
  OptionNote joined = a;
  const bool fits =
      take(joined.start_shift_min, b.start_shift_min) && take(joined.finishers, b.finishers) &&
      take(joined.admixtures, b.admixtures) && take(joined.last_loads, b.last_loads) &&
      take(joined.admixture_zones, b.admixture_zones) &&
      take(joined.placing_sequence, b.placing_sequence) && take(joined.wind_ratio, b.wind_ratio) &&
      take(joined.saws, b.saws) && take(joined.loads, b.loads) &&
      take(joined.load_size_m3, b.load_size_m3) &&
      take(joined.truck_spacing_min, b.truck_spacing_min) && take(joined.own_truck, b.own_truck) &&
      take(joined.concrete_c, b.concrete_c) && take(joined.curing, b.curing) &&
      take(joined.curing_blanket_m2k_w, b.curing_blanket_m2k_w) &&
      take(joined.evaporation_film, b.evaporation_film);
  if (!fits) return std::nullopt;
  std::copy(b.shaded_zones.begin(), b.shaded_zones.end(), std::back_inserter(joined.shaded_zones));
  joined.name.clear();
  return joined;
}

Job started_later(const Job& job, double minutes) {
  Job changed = job;
  const auto move = [minutes](UtcTime& time) {
    time = after_seconds(time, minutes * seconds_per_minute);
  };
  move(changed.pour.start);
  for (Zone& zone : changed.zones) {
    if (zone.placed_at) move(*zone.placed_at);
  }
  return changed;
}

}  // namespace slabtide
