#include <doctest/doctest.h>
#include <fmt/format.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <variant>
#include <vector>

#include "slabtide/core/units.h"
#include "slabtide/job/reading/read_job.h"

// The same job in US units and in metric units gives the same Job.

namespace slabtide::test {
namespace {

/// Uniform between two numbers, including both.
double between(double low, double high) {
  constexpr int steps = 10'000;
  return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

bool sometimes() { return *rc::gen::inRange(0, 2) == 1; }

/// Writes the same quantities into two job files.
class TwinFiles {
 public:
  TwinFiles() {
    us_ = "name = \"twin\"\n";
    si_ = us_ + "units = \"si\"\n";
  }

  void both(const std::string& line) {
    us_ += line + "\n";
    si_ += line + "\n";
  }
  void number(const char* key, double value) { line(key, value, value); }
  void temperature(const char* key, double c) { line(key, fahrenheit_from_celsius(c), c); }
  void length(const char* key, double m) { line(key, ft_from_m(m), m); }
  void thickness(const char* key, double m) { line(key, in_from_m(m), m * 1000.0); }
  void content(const char* key, double kg_m3) { line(key, lb_yd3_from_kg_m3(kg_m3), kg_m3); }
  void line(const char* key, double us, double si) {
    us_ += fmt::format("{} = {:.17g}\n", key, us);
    si_ += fmt::format("{} = {:.17g}\n", key, si);
  }
  void point(const char* key, Point m) {
    us_ += fmt::format("{} = [{:.17g}, {:.17g}]\n", key, ft_from_m(m.x_m), ft_from_m(m.y_m));
    si_ += fmt::format("{} = [{:.17g}, {:.17g}]\n", key, m.x_m, m.y_m);
  }
  void points(const char* key, const std::vector<Point>& points_m) {
    us_ += fmt::format("{} = [", key);
    si_ += fmt::format("{} = [", key);
    for (const auto& point : points_m) {
      us_ += fmt::format("[{:.17g}, {:.17g}],", ft_from_m(point.x_m), ft_from_m(point.y_m));
      si_ += fmt::format("[{:.17g}, {:.17g}],", point.x_m, point.y_m);
    }
    us_ += "]\n";
    si_ += "]\n";
  }

  const std::string& us() const { return us_; }
  const std::string& si() const { return si_; }

 private:
  std::string us_;
  std::string si_;
};

void write_site(TwinFiles& files) {
  files.both("[site]\ntime_zone = \"America/Chicago\"");
  files.number("latitude", between(-60, 60));
  files.number("longitude", between(-180, 180));
  files.length("elevation", between(0, 3000));
  if (sometimes()) files.temperature("ground_temperature", between(2, 35));
}

void write_pour(TwinFiles& files) {
  files.both("[pour]\ndate = 2026-06-01\nstart = \"07:30\"\nhauling = \"buggy\"");
  if (sometimes()) files.length("haul_distance", between(5, 200));
  const double rate_m3_h = between(1, 50);
  if (sometimes()) files.line("placing_rate", yd3_from_m3(rate_m3_h), rate_m3_h);
  files.both("[[pour.cover]]\nkind = \"blanket\"\nfrom = \"20:00\"\nto = \"06:00\"");
  const double r_us = between(1, 10);
  files.line("r_value", r_us, m2k_w_from_r_us(r_us));
}

void write_weather(TwinFiles& files) {
  files.both("[weather]");
  const double high_c = between(10, 45);
  files.temperature("high", high_c);
  files.temperature("low", high_c - between(1, 20));
  if (sometimes()) files.temperature("dew_point", high_c - between(1, 25));
  const double wind_m_s = between(0, 15);
  files.line("wind", mph_from_m_s(wind_m_s), wind_m_s);
  files.number("cloud", std::round(between(1, 100)));
}

void write_temperature(TwinFiles& files) {
  if (sometimes()) {
    files.temperature("concrete_temperature", between(5, 40));
    return;
  }
  files.both("[mix.ingredients]");
  files.temperature("cement_temperature", between(0, 80));
  files.temperature("aggregate_temperature", between(3, 50));
  files.temperature("water_temperature", between(3, 70));
  files.content("aggregate", between(1500, 2200));
  files.content("ice", between(0, 50));
}

void write_mix(TwinFiles& files) {
  files.both("[mix]");
  files.content("cementitious", between(250, 450));
  files.number("w_cm", between(0.35, 0.6));
  const double strength_psi = between(2500, 8000);
  files.line("strength", strength_psi, mpa_from_psi(strength_psi));
  const double margin_psi = between(200, 3000);
  files.line("strength_margin", margin_psi, mpa_from_psi(margin_psi));
  write_temperature(files);
  const double dose_ml = between(0, 500);
  files.both("[[mix.admixture]]\nkind = \"retarder\"");
  files.line("dose", floz_cwt_from_ml_100kg(dose_ml), dose_ml);
}

void write_zones(TwinFiles& files) {
  const double length_m = between(2, 20);
  const double width_m = between(2, 20);
  files.both("[[zone]]\nname = \"pad\"\nfinish = \"stamp\"");
  files.points("outline", {{0, 0}, {length_m, 0}, {length_m, width_m}, {0, width_m}});
  files.thickness("thickness", between(0.08, 0.3));
  files.thickness("base_depth", between(0, 0.5));
  const double extra_m3 = between(0, 5);
  files.line("extra_volume", yd3_from_m3(extra_m3), extra_m3);
  files.both("[zone.border]\nfinish = \"broom\"");
  files.length("width", between(0.1, 0.9));
  files.both("[[zone.face]]");
  files.length("length", between(0.5, 10));
  files.thickness("height", between(0.05, 0.5));
  files.thickness("tread", between(0.1, 2));
  files.both("[[zone]]\nname = \"walk\"\nfinish = \"broom\"");
  files.points("path", {{-1, -2}, {5, -3}, {12, -3 - between(0, 5)}});
  files.length("width", between(0.5, 1.5));
  files.thickness("thickness", between(0.08, 0.3));
}

void write_obstacle(TwinFiles& files) {
  files.both("[[obstacle]]\nkind = \"tree\"");
  files.point("at", {between(-50, 50), between(-50, 50)});
  files.length("radius", between(0.5, 8));
  files.length("height", between(1, 30));
}

/// Every dimensional number of the job, in a fixed order.
std::vector<double> numbers_of(const Job& job) {
  std::vector<double> all{job.site.latitude_deg,
                          job.site.longitude_deg,
                          job.site.elevation_m,
                          job.site.ground_c.value_or(0),
                          job.pour.haul_distance_m.value_or(0),
                          job.pour.placing_rate_m3_h.value_or(0)};
  for (const auto& cover : job.pour.covers) all.push_back(cover.resistance_m2k_w);
  const auto& day = std::get<TypedWeather>(job.weather);
  all.insert(all.end(), {day.high_c, day.low_c, day.dew_point_c.value_or(0), day.wind_10m_m_s,
                         day.cloud.morning});
  all.insert(all.end(),
             {job.mix.cementitious_kg_m3, job.mix.w_cm, job.mix.specified_strength_psi,
              job.mix.strength_margin_psi.value_or(0.0), *job.mix.admixtures.at(0).dose_ml_100kg});
  if (const auto* const parts = std::get_if<IngredientTemperatures>(&job.mix.temperature)) {
    all.insert(all.end(), {parts->cement_c, parts->aggregate_c, parts->water_c,
                           parts->aggregate_kg_m3, parts->ice_kg_m3});
  } else {
    all.push_back(std::get<double>(job.mix.temperature));
  }
  for (const auto& zone : job.zones) {
    all.insert(all.end(), {zone.thickness_m, zone.base.depth_m, zone.extra_volume_m3});
    for (const auto& point : zone.outline) all.insert(all.end(), {point.x_m, point.y_m});
    if (zone.border) all.push_back(zone.border->width_m);
    for (const auto& face : zone.faces)
      all.insert(all.end(), {face.length_m, face.height_m, face.tread_m});
  }
  for (const auto& tree : job.obstacles) {
    all.insert(all.end(), {tree.from.x_m, tree.from.y_m, tree.radius_m, tree.height_m});
  }
  return all;
}

double disagreement(const std::vector<double>& a, const std::vector<double>& b) {
  double worst = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    worst = std::max(worst, std::abs(a[i] - b[i]) / std::max(1.0, std::abs(a[i])));
  }
  return worst;
}

}  // namespace

TEST_CASE("a job in US units and its metric twin read alike") {
  double worst = 0.0;
  const bool alike = rc::check([&] {
    TwinFiles files;
    write_site(files);
    write_pour(files);
    write_weather(files);
    write_mix(files);
    write_zones(files);
    write_obstacle(files);
    const auto us = read_job(files.us());
    const auto si = read_job(files.si());
    if (!us.ok()) RC_FAIL(render_all(us.diagnostics, "us", files.us()));
    if (!si.ok()) RC_FAIL(render_all(si.diagnostics, "si", files.si()));
    const auto a = numbers_of(*us.value);
    const auto b = numbers_of(*si.value);
    RC_ASSERT(a.size() == b.size());
    const double off = disagreement(a, b);
    RC_ASSERT(off < 1e-9);
    worst = std::max(worst, off);
  });
  CHECK(alike);
  MESSAGE("largest disagreement " << worst);
}

}  // namespace slabtide::test
