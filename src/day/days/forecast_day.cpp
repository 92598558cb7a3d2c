#include "slabtide/day/days/forecast_day.h"

namespace slabtide {

double ForecastDay::loss_chance() const {
  return 1.0 - (1.0 - rain_before_set.wets_chance()) * (1.0 - finish_lost_fraction.value_or(0.0)) *
                   (1.0 - frost_fraction.value_or(0.0));
}

}  // namespace slabtide
