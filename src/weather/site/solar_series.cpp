#include "solar_series.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

constexpr double longest_filled_s = 3.0 * seconds_per_hour;
constexpr double longest_mean_s = 6.0 * seconds_per_hour;

struct Row {
  double at_s;
  std::optional<double> mean_w_m2;
};

/// Interpolates the rows between `before` and `after`, which have values.
void fill_between(std::vector<Row>& rows, std::size_t before, std::size_t after) {
  const double length_s = rows[after].at_s - rows[before].at_s;
  if (length_s > longest_filled_s) return;
  for (std::size_t i = before + 1; i < after; ++i) {
    rows[i].mean_w_m2 = std::lerp(*rows[before].mean_w_m2, *rows[after].mean_w_m2,
                                  (rows[i].at_s - rows[before].at_s) / length_s);
  }
}

std::vector<Row> filled_rows(const Forecast& forecast) {
  std::vector<Row> rows;
  std::optional<std::size_t> known;
  for (const ForecastHour& hour : forecast.hours) {
    rows.push_back({seconds_between(forecast.hours.front().at, hour.at), hour.solar_w_m2});
    if (!hour.solar_w_m2) continue;
    if (known) fill_between(rows, *known, rows.size() - 1);
    known = rows.size() - 1;
  }
  return rows;
}

bool follows(const Row& before, const Row& row) {
  return before.mean_w_m2 && row.at_s - before.at_s <= longest_mean_s;
}

}  // namespace

SolarSeries::SolarSeries(const Forecast& forecast) {
  const std::vector<Row> rows = filled_rows(forecast);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (!rows[i].mean_w_m2 || (i > 0 && follows(rows[i - 1], rows[i]))) continue;
    std::vector<double> edges_s{rows[i].at_s - seconds_per_hour, rows[i].at_s};
    std::vector<double> means{*rows[i].mean_w_m2};
    for (std::size_t j = i + 1;
         j < rows.size() && rows[j].mean_w_m2 && follows(rows[j - 1], rows[j]); ++j) {
      edges_s.push_back(rows[j].at_s);
      means.push_back(*rows[j].mean_w_m2);
    }
    const double from_s = edges_s.front();
    const double to_s = edges_s.back();
    stretches_.push_back({from_s, to_s, mean_keeping_curve(std::move(edges_s), std::move(means))});
  }
}

std::optional<double> SolarSeries::at(double s) const {
  // Search the latest stretch first: if a stretch begins within an hour of the last one, its own
  // rows count.
  const auto holds = [s](const Stretch& stretch) {
    return s >= stretch.from_s && s <= stretch.to_s;
  };
  const auto stretch = std::find_if(stretches_.rbegin(), stretches_.rend(), holds);
  if (stretch == stretches_.rend()) return std::nullopt;
  return stretch->flux_w_m2(s);
}

}  // namespace slabtide
