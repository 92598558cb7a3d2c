#include "sighting.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <fmt/format.h>

#include "day/practice/one_in_ten.h"
#include "slabtide/core/units.h"
#include "slabtide/day/field/check_back.h"
#include "slabtide/weather/air/moist_air.h"

namespace slabtide {

namespace {

/// Still air counts as this much, so that its logarithm exists (ours).
constexpr double min_wind_m_s = 0.1;

/// One standard deviation of an observation, in the quantity that is compared.
double deviation(ObservationKind kind, const ObservationRules& rules) {
  const auto minutes = [](double min) { return min * seconds_per_minute / one_in_ten_z; };
  switch (kind) {
    case ObservationKind::concrete_temperature:
      return rules.concrete_k / one_in_ten_z;
    case ObservationKind::placed:
      return minutes(rules.placed_min);
    case ObservationKind::sheen_gone:
      return minutes(rules.sheen_gone_min);
    case ObservationKind::thumbprint:
      return minutes(rules.thumbprint_min);
    case ObservationKind::print_firm:
      return minutes(rules.print_firm_min);
    case ObservationKind::edge_held:
      return minutes(rules.edge_held_min);
    case ObservationKind::initial_set:
      return minutes(rules.initial_set_min);
    case ObservationKind::surface_temperature:
      return rules.surface_k / one_in_ten_z;
    case ObservationKind::air_temperature:
      return rules.air_k / one_in_ten_z;
    case ObservationKind::wind:
      return std::log1p(rules.wind_fraction) / one_in_ten_z;
    case ObservationKind::humidity:
      return rules.humidity / one_in_ten_z;
    case ObservationKind::sawed:
    case ObservationKind::crack:
      return minutes(rules.sawed_min);
  }
  return 0.0;
}

/// The quantity of an observation that is compared.
double value_of(const Observation& reading, double at_s) {
  if (!reading.value) return at_s;
  if (reading.kind == ObservationKind::wind)
    return std::log(std::max(*reading.value, min_wind_m_s));
  return *reading.value;
}

using TimeOf = std::optional<double> (*)(const ColumnEvents&);

TimeOf time_of(ObservationKind kind) {
  switch (kind) {
    case ObservationKind::sheen_gone:
      return [](const ColumnEvents& e) { return e.sheen_gone_s; };
    case ObservationKind::thumbprint:
      return [](const ColumnEvents& e) { return e.thumbprint_s; };
    case ObservationKind::print_firm:
      return [](const ColumnEvents& e) { return e.print_firm_s; };
    case ObservationKind::edge_held:
      return [](const ColumnEvents& e) { return e.edge_held_s; };
    case ObservationKind::initial_set:
      return [](const ColumnEvents& e) { return e.initial_set_s; };
    case ObservationKind::sawed:
      return [](const ColumnEvents& e) { return e.window(Operation::saw_dry).opens_s; };
    default:
      return nullptr;
  }
}

/// The time halfway between the part's first and last. If it does not happen the end of the weather
/// is used, since it is at least as late as that.
double typical_s(const Sighting& sighting, const DayEvents& day, double end_s) {
  const TimeOf time = time_of(sighting.kind);
  return 0.5 * (time(day[sighting.columns.first]).value_or(end_s) +
                time(day[sighting.columns.last]).value_or(end_s));
}

/// The weather of a sampled day at an instant.
struct SampledAir {
  double air_c = 0.0;
  double humidity_fraction = 0.0;
  double wind_m_s = 0.0;
};

SampledAir sampled_air(const SiteWeather& weather, const WeatherErrors& errors, double at_s) {
  const std::size_t i = weather.grid.index_at(at_s + 0.5 * weather.grid.step_s);
  const double growth = error_growth(errors, at_s / seconds_per_hour);
  SampledAir drawn;
  drawn.air_c = weather.air_c[i] + air_error_k(errors, weather, i);
  const double dew_c = std::min(drawn.air_c, weather.dew_point_c[i] + growth * errors.dew_point_k);
  drawn.humidity_fraction = vapour_pressure_pa(dew_c) / saturation_pressure_pa(drawn.air_c);
  drawn.wind_m_s = weather.wind_slab_m_s[i] * std::exp(wind_error_log(errors, weather, i));
  return drawn;
}

double expected_value(const Sighting& sighting, std::size_t reading, const Sample& sample,
                      const DayEvents& day, const DayModel& model, const PourRun& run) {
  const SiteWeather& weather = model.set().weather;
  const double at_s = sighting.at_s[reading];
  switch (sighting.kind) {
    case ObservationKind::concrete_temperature:
      return run.mix_of(run.zones[sighting.zone()]).discharge_c + sample.mix.discharge_k;
    case ObservationKind::placed:
      return sampled_placing_s(
          seconds_between(run.weather.grid.start, run.zones[sighting.zone()].placing.start),
          model.set().start_s, sample);
    case ObservationKind::surface_temperature: {
      const std::size_t place = sighting.surface[reading];
      return 0.5 * (day[sighting.columns.first].surface_c[place] +
                    day[sighting.columns.last].surface_c[place]);
    }
    case ObservationKind::air_temperature:
      return sampled_air(weather, sample.weather, at_s).air_c;
    case ObservationKind::wind:
      return std::log(std::max(sampled_air(weather, sample.weather, at_s).wind_m_s, min_wind_m_s));
    case ObservationKind::humidity:
      return sampled_air(weather, sample.weather, at_s).humidity_fraction;
    default:
      return typical_s(sighting, day, weather.grid.end_s());
  }
}

/// Logarithm of the probability that a standard normal is below `z`, approximated where it is
/// almost 0.
double log_chance_under(double z) {
  constexpr double far_off = -6.0;
  if (z < far_off) return -0.5 * z * z;
  return std::log(0.5 * std::erfc(-z / std::sqrt(2.0)));
}

class Collecting {
 public:
  Collecting(const PourRun& run, const DayPlan& plan, DayModel& model,
             const ObservationRules& rules)
      : run_(run), plan_(plan), model_(model), rules_(rules) {}

  void add(const Observation& reading, std::size_t index) {
    if (reading.kind == ObservationKind::crack) return;
    Sighting& sighting = find(reading);
    const double at_s = seconds_between(run_.weather.grid.start, reading.at);
    sighting.readings.push_back(index);
    sighting.at_s.push_back(at_s);
    sighting.values.push_back(value_of(reading, at_s));
    if (reading.kind == ObservationKind::surface_temperature) {
      sighting.surface.push_back(model_.ask_surface(at_s));
    }
  }

  std::vector<Sighting> take() {
    std::stable_sort(sightings_.begin(), sightings_.end(),
                     [](const Sighting& a, const Sighting& b) { return a.at_s[0] < b.at_s[0]; });
    return std::move(sightings_);
  }

 private:
  Sighting& find(const Observation& reading) {
    std::optional<PlaceId> place;
    if (!reading.zone.empty()) place = place_of(reading, plan_);
    const auto same = [&](const Sighting& s) { return s.kind == reading.kind && s.place == place; };
    const auto found = std::find_if(sightings_.begin(), sightings_.end(), same);
    if (found != sightings_.end()) return *found;
    sightings_.push_back(begin(reading, place));
    return sightings_.back();
  }

  Sighting begin(const Observation& reading, const std::optional<PlaceId>& place) const {
    Sighting made;
    made.kind = reading.kind;
    made.place = place;
    made.place_words =
        reading.part.empty() ? reading.zone : fmt::format("{}, {}", reading.zone, reading.part);
    made.columns = columns_of(place ? place->part : std::string(), plan_.zones[made.zone()],
                              model_.zones()[made.zone()]);
    const double one = deviation(reading.kind, rules_);
    made.variance = one * one;
    made.shared_variance = rules_.shared_fraction * made.variance;
    made.by_then = reading.kind == ObservationKind::sawed;
    return made;
  }

  const PourRun& run_;
  const DayPlan& plan_;
  DayModel& model_;
  const ObservationRules& rules_;
  std::vector<Sighting> sightings_;
};

/// Adds the model's own error and that of the place: the observation may be anywhere between the
/// part's first and last time, with uniform probability, so the variance is a twelfth of the
/// square. Both errors are the same for all observations.
void add_shared_errors(Sighting& sighting, const DayEvents& planned,
                       const ObservationRules& rules) {
  const TimeOf time = time_of(sighting.kind);
  if (time == nullptr) return;
  const double model_s = rules.model_min * seconds_per_minute / one_in_ten_z;
  sighting.variance += model_s * model_s;
  sighting.shared_variance += model_s * model_s;
  const auto first = time(planned[sighting.columns.first]);
  const auto last = time(planned[sighting.columns.last]);
  if (!first || !last) return;
  const double variance = (*last - *first) * (*last - *first) / 12.0;
  sighting.variance += variance;
  sighting.shared_variance += variance;
}

}  // namespace

double Sighting::mean_value() const {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double Sighting::mean_variance() const {
  return shared_variance + (variance - shared_variance) / static_cast<double>(values.size());
}

std::vector<Sighting> sightings_of(const PourRun& run, const DayPlan& plan, const Journal& journal,
                                   DayModel& model, const ObservationRules& rules) {
  Collecting collecting(run, plan, model, rules);
  for (std::size_t i = 0; i < journal.readings.size(); ++i) {
    collecting.add(journal.readings[i], i);
  }
  std::vector<Sighting> sightings = collecting.take();
  if (sightings.empty()) return sightings;
  const DayEvents planned = model.on({});
  for (Sighting& sighting : sightings) add_shared_errors(sighting, planned, rules);
  return sightings;
}

std::vector<double> expected_values(const Sighting& sighting, const Sample& sample,
                                    const DayEvents& day, const DayModel& model,
                                    const PourRun& run) {
  std::vector<double> expected;
  for (std::size_t i = 0; i < sighting.values.size(); ++i) {
    expected.push_back(expected_value(sighting, i, sample, day, model, run));
  }
  return expected;
}

double log_chance(const Sighting& sighting, std::span<const double> expected) {
  const auto count = static_cast<double>(expected.size());
  double mean = 0.0;
  for (std::size_t i = 0; i < expected.size(); ++i) mean += sighting.values[i] - expected[i];
  mean /= count;
  if (sighting.by_then) return log_chance_under(mean / std::sqrt(sighting.mean_variance()));
  double rest = 0.0;
  for (std::size_t i = 0; i < expected.size(); ++i) {
    const double off = sighting.values[i] - expected[i] - mean;
    rest += off * off;
  }
  const double own_variance = sighting.variance - sighting.shared_variance;
  return -0.5 * (rest / own_variance + mean * mean / sighting.mean_variance());
}

}  // namespace slabtide
