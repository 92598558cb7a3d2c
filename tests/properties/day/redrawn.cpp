#include "redrawn.h"

#include <algorithm>
#include <cmath>
#include <regex>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "job/geometry/zone_geometry.h"
#include "report/files/json_plan.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "support/random_job.h"

namespace slabtide::test {

namespace {

using Json = nlohmann::json;

/// Removes places such as "(1.5, 2)" from the text.
std::string without_places(const std::string& text) {
  static const std::regex place(R"(\(-?[0-9.]+, -?[0-9.]+\))");
  return std::regex_replace(text, place, "(there)");
}

std::string without_sides(const std::string& text) {
  static const std::regex side("north|south|east|west");
  // So are the pieces of a zone that is cut from side to side.
  static const std::regex piece("(?:west|south)-[0-9]+(-of-[0-9]+)");
  // Panels are counted from the north-west, so another one may be the first.
  static const std::regex panel(
      "(joints drawn break a rule|no joints proposed here keep every rule).*|panel [0-9]+ ");
  const std::string uncounted = std::regex_replace(text, piece, "some$1");
  return std::regex_replace(std::regex_replace(uncounted, side, "some"), panel, "$1");
}

/// Compares two plans by traversing both.
class Comparing {
 public:
  explicit Comparing(const Expected& expected) : expected_(expected) {}

  void compare(const std::string& path, const Json& first, const Json& second) {
    if (first.type() != second.type() && !(first.is_number() && second.is_number())) {
      return differ(path, first, second);
    }
    if (first.is_object()) return compare_objects(path, first, second);
    if (first.is_array()) return compare_arrays(path, first, second);
    if (first.is_string() ? text_differs(first, second) : first != second) {
      differ(path, first, second);
    }
  }

  std::vector<std::string> take() { return std::move(differences_); }

 private:
  void compare_objects(const std::string& path, const Json& first, const Json& second) {
    if (first.size() != second.size()) differ(path, first, second);
    const bool joint = first.contains("from_m") && second.contains("from_m");
    if (joint) compare_joints(path, first, second);
    for (const auto& [key, value] : first.items()) {
      if (joint && (key == "from_m" || key == "to_m")) continue;
      // Far from any structure a cut is measured from the north or east end, which is another end
      // of a drawing that is turned; its coordinates are compared.
      if (joint && key == "where" && expected_.turned) continue;
      if (!second.contains(key)) {
        differ(path + "/" + key, value, {});
        continue;
      }
      compare(path + "/" + key, value, second[key]);
    }
  }

  void compare_arrays(const std::string& path, const Json& first, const Json& second) {
    if (first.size() != second.size()) return differ(path, first, second);
    if (expected_.turned && path.ends_with("/faults")) return compare_faults(path, first, second);
    for (std::size_t i = 0; i < first.size(); ++i) {
      compare(fmt::format("{}/{}", path, i), first[i], second[i]);
    }
  }

  void compare_faults(const std::string& path, const Json& first, const Json& second) {
    const auto sorted = [](const Json& faults) {
      std::vector<std::string> texts;
      for (const Json& fault : faults) texts.push_back(without_sides(without_places(fault)));
      std::sort(texts.begin(), texts.end());
      return texts;
    };
    if (sorted(first) != sorted(second)) differ(path, first, second);
  }

  static Point point(const Json& json) { return {json[0], json[1]}; }

  bool lies_at(const Json& first, const Json& second) const {
    constexpr double printed_m = 0.002;
    const Point to = expected_.moved(point(first));
    const Point is = point(second);
    return std::abs(to.x_m - is.x_m) < printed_m && std::abs(to.y_m - is.y_m) < printed_m;
  }

  void compare_joints(const std::string& path, const Json& first, const Json& second) {
    if (!lies_at(first["from_m"], second["from_m"]) || !lies_at(first["to_m"], second["to_m"])) {
      differ(path, first, second);
    }
  }

  bool text_differs(const std::string& first, const std::string& second) const {
    std::string one = without_places(first);
    std::string other = without_places(expected_.read_back(second));
    return expected_.turned ? without_sides(one) != without_sides(other) : one != other;
  }

  void differ(const std::string& path, const Json& first, const Json& second) {
    constexpr std::size_t room = 90;
    differences_.push_back(fmt::format("{}: {} became {}", path, first.dump().substr(0, room),
                                       second.dump().substr(0, room)));
  }

  const Expected& expected_;
  std::vector<std::string> differences_;
};

DayPlan plan_with_bands(const Job& job, const Forecast& forecast, const PourRun& run,
                        const Practice& practice, std::size_t samples) {
  DayPlan plan = plan_day(job, run, practice);
  if (samples == 0) return plan;
  const DayModel model(job, run, plan, practice, sample_scale(job, run, forecast, practice.spread));
  const Ensemble ensemble = sample_days(model, {samples, 1, {}});
  return with_bands(std::move(plan), job, ensemble);
}

}  // namespace

bool is_quick(const std::string& toml) {
  constexpr double max_m2 = 15.0;
  const Parsed<Job> reading = read_job(toml);
  if (!reading.ok() || toml.find("[practice.joints]") != std::string::npos) return false;
  double sum_m2 = 0.0;
  for (const Zone& zone : reading.value->zones) sum_m2 += area_m2(zone.outline);
  return sum_m2 < max_m2;
}

std::optional<std::string> plan_json(const std::string& toml, std::size_t samples) {
  const Parsed<Job> reading = read_job(toml);
  if (!reading.ok()) return std::nullopt;
  const Job& job = *reading.value;
  return plan_json(job,
                   high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date),
                   samples);
}

std::optional<std::string> plan_json(const Job& job, const Forecast& forecast,
                                     std::size_t samples) {
  const auto series = WeatherSeries::from_forecast(forecast);
  auto practice = read_practice(job.practice_overrides_toml, default_practice());
  if (!series.ok() || !practice.ok()) return std::nullopt;
  SolverSettings solver;
  solver.threads = 1;
  // Coarser than in the program: the results must agree for any step.
  solver.early_step_s = 300.0;
  solver.late_step_s = 1200.0;
  const auto run = run_pour(job, *series.value, *practice.value, solver);
  if (!run.ok()) return std::nullopt;
  const DayPlan plan = plan_with_bands(job, forecast, *run.value, *practice.value, samples);
  return json_plan({job, forecast, *practice.value, *run.value, plan});
}

std::vector<std::string> differences(const std::string& first, const std::string& second,
                                     const Expected& expected) {
  Comparing comparing(expected);
  comparing.compare("", Json::parse(first), Json::parse(second));
  return comparing.take();
}

std::vector<std::string> faults_of_jobs(std::uint64_t first_seed, int jobs,
                                        const std::function<std::string(std::string)>& prepared,
                                        const Redrawing& resampled) {
  constexpr int one_with_draws_in = 12;
  constexpr std::size_t some_draws = 8;
  std::vector<std::string> faults;
  int planned = 0;
  for (std::uint64_t seed = first_seed; planned < jobs; ++seed) {
    const std::string toml = prepared(random_job_toml(seed));
    if (!is_quick(toml)) continue;
    const std::size_t samples = planned % one_with_draws_in == 0 ? some_draws : 0;
    const auto first = plan_json(toml, samples);
    if (!first) continue;
    ++planned;
    const auto [text, expected] = resampled(toml);
    const auto second = plan_json(text, samples);
    if (!second) {
      faults.push_back(fmt::format("seed {}: cannot be planned any more", seed));
      continue;
    }
    const auto found = differences(*first, *second, expected);
    if (found.empty()) continue;
    faults.push_back(fmt::format("seed {}: {} differences, {}", seed, found.size(), found.front()));
  }
  return faults;
}

}  // namespace slabtide::test
