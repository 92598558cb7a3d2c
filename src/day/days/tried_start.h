#pragma once

#include "day/joints/cut_memo.h"
#include "day/pour/pour_memo.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/day/days/days_case.h"
#include "slabtide/day/days/forecast_day.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

/// What the starts of all days share.
struct StartsCase {
  const DaysCase& asked;
  const WeatherSeries& series;
  PourMemo& memo;
  CutMemo& cuts;
};

/// The day that begins at `start`, on which `samples` days are drawn (fewer of very many zones if
/// the settings say so); it has no other starts. Runs on one thread. `value` is absent if the pour
/// cannot be computed.
Parsed<ForecastDay> try_start(const StartsCase& shared, UtcTime start, std::size_t samples,
                              bool fewer_of_many);

}  // namespace slabtide
