// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_WEATHER_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_WEATHER_INL_H
#undef SLABTIDE_SLAB_LANE_WEATHER_INL_H
#else
#define SLABTIDE_SLAB_LANE_WEATHER_INL_H
#endif

#include <array>
#include <cstddef>

#include "slab/column/cell_weather-inl.h"
#include "slab/column/cell_weather.h"
#include "slab/column/column_batch.h"
#include "slab/column/column_steps.h"
#include "slab/column/lane_traits-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// The cover on each column.
template <class Number>
struct CoverOf {
  Number resistance_m2k_w;
  Number open;  // 1 if it lets vapour through, else 0
};

/// The weather over several columns, each so long after its own placing.
template <class Number>
class LaneWeather {
 public:
  LaneWeather(const ColumnBatch& batch, Cases cases)
      : grid_(batch.weather.grid), shared_(batch.shared.data()), air_(batch.air), cases_(cases) {
    for (std::size_t i = 0; i < lanes; ++i) {
      const ColumnCase& column = *cases[std::min(i, cases.size() - 1)];
      shortwave_[i] = column.exposure->shortwave_w_m2.data();
      placed_s_[i] = column.placed_s;
    }
    for (const ColumnCase* each : cases) covered_ = covered_ || !each->covers.empty();
    steady_ = cover_from_cases(0.0);
  }

  WeatherNow<Number> at(Number elapsed_s) const {
    HWY_ALIGN LaneArray<Number> fractions = lanes_of(elapsed_s);
    HWY_ALIGN std::array<LaneArray<Number>, entries> before;
    HWY_ALIGN std::array<LaneArray<Number>, entries> after;
    for (std::size_t i = 0; i < lanes; ++i) {
      const GridPlace place = place_on(grid_, placed_s_[i] + fractions[i]);
      fractions[i] = static_cast<Each>(place.fraction);
      const SharedWeather& now = shared_[place.before];
      const SharedWeather& next = shared_[place.before + 1];
      for (std::size_t k = 0; k < now.size(); ++k) {
        before[k][i] = static_cast<Each>(now[k]);
        after[k][i] = static_cast<Each>(next[k]);
      }
      before[now.size()][i] = static_cast<Each>(shortwave_[i][place.before]);
      after[now.size()][i] = static_cast<Each>(shortwave_[i][place.before + 1]);
    }
    const Number fraction = Memory<Number>::load(fractions.data());
    const auto between = [&](std::size_t k) HWY_ATTR {
      const Number from = Memory<Number>::load(before[k].data());
      return from + fraction * (Memory<Number>::load(after[k].data()) - from);
    };
    return {between(0), between(1), between(2), between(3), between(4), between(5)};
  }

  const ThinAir& thin_air() const { return air_; }

  CoverOf<Number> cover_at(Number elapsed_s) const {
    if (!covered_) return steady_;
    return cover_from_cases(elapsed_s);
  }

  /// How long until a cover is next laid or taken off.
  Number until_cover_changes_s(Number elapsed_s) const {
    if (!covered_) return forever_s;
    const LaneArray<Number> elapsed = lanes_of(elapsed_s);
    return each_lane<Number>(cases_.size(), [&](std::size_t i) {
      return slabtide::until_cover_changes_s(*cases_[i], placed_s_[i] + elapsed[i]);
    });
  }

 private:
  using Each = typename Memory<Number>::Each;
  static constexpr std::size_t lanes = Memory<Number>::columns;
  static constexpr std::size_t entries = std::tuple_size_v<SharedWeather> + 1;

  CoverOf<Number> cover_from_cases(Number elapsed_s) const {
    const LaneArray<Number> elapsed = lanes_of(elapsed_s);
    std::array<CoverState, lanes> covers;
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      covers[i] = slabtide::cover_at(*cases_[i], placed_s_[i] + elapsed[i]);
    }
    return {
        each_lane<Number>(cases_.size(), [&](std::size_t i) { return covers[i].resistance_m2k_w; }),
        each_lane<Number>(cases_.size(),
                          [&](std::size_t i) { return covers[i].stops_evaporation ? 0.0 : 1.0; })};
  }

  const TimeGrid& grid_;
  const SharedWeather* shared_;
  const ThinAir& air_;
  Cases cases_;
  std::array<const double*, lanes> shortwave_;
  std::array<double, lanes> placed_s_;
  bool covered_ = false;
  CoverOf<Number> steady_;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
