#include "slabtide/day/field/learned_pour.h"

#include <algorithm>
#include <cmath>

#include "slab/process/setting.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/uncertainty/sampled_pour.h"

namespace slabtide {

namespace {

constexpr int max_iterations = 6;
constexpr double factor_settled = 0.002;
constexpr double min_factor = 0.4;
constexpr double max_factor = 2.5;

/// Computes a mean; empty if nothing was added.
class Mean {
 public:
  void add(double value) {
    sum_ += value;
    ++count_;
  }
  std::optional<double> get() const {
    if (count_ == 0) return std::nullopt;
    return sum_ / count_;
  }

 private:
  double sum_ = 0.0;
  int count_ = 0;
};

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t middle = values.size() / 2;
  return values.size() % 2 == 1 ? values[middle] : 0.5 * (values[middle - 1] + values[middle]);
}

class Learning {
 public:
  Learning(const Journal& journal, const DayPlan& plan, const Practice& practice)
      : journal_(journal), plan_(plan), practice_(practice) {}

  /// The day as it was noted, apart from the mix: the mean delay and temperature differences.
  Sample noted_day(const std::vector<CheckedObservation>& checked) const {
    Sample sample;
    const auto mean = [&](ObservationKind kind) {
      Mean differences;
      for (const CheckedObservation& one : checked) {
        const Observation& reading = journal_.readings[one.reading];
        if (reading.kind != kind) continue;
        if (one.planned_value) differences.add(*reading.value - *one.planned_value);
        if (one.planned) differences.add(seconds_between(*one.planned, reading.at));
      }
      return differences.get();
    };
    sample.delay_s = mean(ObservationKind::placed).value_or(0.0);
    sample.mix.discharge_k = mean(ObservationKind::concrete_temperature).value_or(0.0);
    sample.weather.air_k = mean(ObservationKind::air_temperature).value_or(0.0);
    return sample;
  }

  /// What the observations of the set say about a run: logarithms of the set times over the run's
  /// own.
  std::vector<double> factor_logs(const PourRun& run) const {
    std::vector<double> logs;
    for (const Observation& reading : journal_.readings) {
      const auto psi = setting_psi(reading.kind, practice_);
      if (!psi) continue;
      const PlaceId place = place_of(reading, plan_);
      const SettingParameters& setting = run.mix_of(run.zones[place.zone]).setting;
      const double noted_h = set_age_h(reading, place, run) - setting.shift_h;
      const double own_h = set_age_at_resistance_h(*psi, setting) - setting.shift_h;
      if (noted_h > 0.0) logs.push_back(std::log(noted_h / own_h));
    }
    return logs;
  }

 private:
  /// The mean set age over the observation's place at its time.
  double set_age_h(const Observation& reading, const PlaceId& place, const PourRun& run) const {
    const double at_s = seconds_between(run.weather.grid.start, reading.at);
    double sum = 0.0;
    double area_m2 = 0.0;
    for (const std::size_t i : cells_at(place, plan_)) {
      const CellRun& cell = run.zones[place.zone].cells[i];
      const ColumnHistory& history = run.histories[cell.history];
      const auto& ages = reading.kind == ObservationKind::initial_set ? history.set_age_middle_h
                                                                      : history.set_age_work_h;
      sum += cell.cell.area_m2 * value_at(history.time_s, ages, at_s);
      area_m2 += cell.cell.area_m2;
    }
    return sum / area_m2;
  }

  const Journal& journal_;
  const DayPlan& plan_;
  const Practice& practice_;
};

bool has_observation(const Journal& journal, ObservationKind kind) {
  return std::any_of(journal.readings.begin(), journal.readings.end(),
                     [kind](const Observation& reading) { return reading.kind == kind; });
}

}  // namespace

BookedPour learn_pour(const Journal& journal, const Job& job, const PourRun& run,
                      const DayPlan& plan, const Practice& practice) {
  const Learning learning(journal, plan, practice);
  const std::vector<CheckedObservation> checked = check_back(journal, job, run, plan, practice);
  Sample sample = learning.noted_day(checked);
  BookedPour pour;
  pour.job = job.name;
  pour.site = job.site.name;
  pour.date = job.pour.date;
  if (has_observation(journal, ObservationKind::air_temperature)) {
    pour.air_k = sample.weather.air_k + (job.site.learned_air ? job.site.learned_air->air_k : 0.0);
  }
  for (const CheckedObservation& one : checked) {
    const bool placed = journal.readings[one.reading].kind == ObservationKind::placed;
    if (const auto late = one.late_min(journal); late && !placed) pour.late_min.push_back(*late);
  }
  double& factor = sample.mix.set_time_factor;
  for (int round = 0; round < max_iterations; ++round) {
    const std::vector<double> logs =
        learning.factor_logs(run_sampled(run, sample, SolverSettings{}));
    pour.readings = static_cast<int>(logs.size());
    if (logs.empty()) break;
    const double step = median(logs);
    factor = std::clamp(factor * std::exp(step), min_factor, max_factor);
    if (std::abs(step) < factor_settled) break;
  }
  pour.set_factor = factor * (job.mix.learned ? job.mix.learned->set_factor : 1.0);
  return pour;
}

}  // namespace slabtide
