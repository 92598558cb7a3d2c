// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_MODES_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_MODES_INL_H
#undef SLABTIDE_SLAB_LANE_MODES_INL_H
#else
#define SLABTIDE_SLAB_LANE_MODES_INL_H
#endif

#include <array>
#include <cstddef>
#include <vector>

#include <hwy/aligned_allocator.h>

#include "slab/column/column_batch.h"
#include "slab/column/column_modes.h"
#include "slab/column/lane_traits-inl.h"
#include "slab/process/conduction-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// The modes of several columns, with all their rows in one block of memory. Columns with fewer
/// (formed faces have no ground) are padded with modes that no heat goes into.
template <class Number>
class LaneModes {
 public:
  LaneModes(const ColumnBatch& batch, Cases cases) : cases_(cases) {
    for (const ColumnCase* each : cases) modes_.push_back(&batch.modes_of(*each));
    for (const ColumnModes* each : modes_) rows.modes = std::max(rows.modes, each->count());
    rows.rest_c = each_case<Number>(cases, slabtide::rest_c);
    if (batch.settings.keep_profile) profile_ = slabtide::profile_points;
    lay_out();
    fill();
  }

  ModeRows<Number> rows{};

  Number heat_thickness_m(std::size_t point) const {
    return each_lane<Number>(modes_.size(),
                             [&](std::size_t i) { return modes_[i]->heat_thickness_m[point]; });
  }

  std::array<Number, probe_count> probes_c() const { return read<probe_count>(at_probe_); }
  /// Where heat is released.
  std::array<Number, heat_points> heat_points_c() const { return read<heat_points>(at_heat_); }

  /// Releases heat at each of the points, in W/m2 each, until this is called again.
  HWY_INLINE void release(const std::array<Number, heat_points>& w_m2) {
    for (std::size_t m = 0; m < rows.modes; ++m) {
      Number source = 0.0;
      for (std::size_t k = 0; k < heat_points; ++k) {
        source += from_heat_[m * heat_points + k] * w_m2[k];
      }
      rows.source.put(m, source);
    }
  }

  Number mean_c() const { return rows.rest_c + sum_of(in_mean_); }
  Number gradient_c() const { return sum_of(in_gradient_); }
  /// Less what it stores at the temperature far below.
  Number stored_j_m2() const { return sum_of(stored_j_m2_); }

  Number profile_c(std::size_t point) const {
    return rows.rest_c + sum_of(Row<Number>{at_profile_.data + point * rows.modes * lanes});
  }

 private:
  using Each = typename Memory<Number>::Each;
  static constexpr std::size_t lanes = Memory<Number>::columns;

  template <std::size_t count>
  HWY_INLINE std::array<Number, count> read(const Row<Number>& at) const {
    std::array<Number, count> sums;
    sums.fill(rows.rest_c);
    for (std::size_t m = 0; m < rows.modes; ++m) {
      const Number amplitude = rows.amplitude[m];
      for (std::size_t k = 0; k < count; ++k) sums[k] += at[m * count + k] * amplitude;
    }
    return sums;
  }

  Number sum_of(const Row<Number>& weights) const {
    Number sum = 0.0;
    for (std::size_t m = 0; m < rows.modes; ++m) sum += weights[m] * rows.amplitude[m];
    return sum;
  }

  void lay_out() {
    const std::size_t entries = (11 + probe_count + 2 * heat_points + profile_) * rows.modes;
    memory_ = hwy::AllocateAligned<Each>(entries * lanes);
    std::fill_n(memory_.get(), entries * lanes, Each{0});
    Each* next = memory_.get();
    const auto take = [&](Row<Number>& row, std::size_t of_each_mode) {
      row.data = next;
      next += of_each_mode * rows.modes * lanes;
    };
    for (Row<Number>* each : {&rows.decay_per_s, &rows.at_surface, &rows.amplitude, &rows.source,
                              &rows.kept, &rows.from_start, &rows.from_end, &rows.from_source,
                              &in_mean_, &in_gradient_, &stored_j_m2_}) {
      take(*each, 1);
    }
    take(at_probe_, probe_count);
    take(at_heat_, heat_points);
    take(from_heat_, heat_points);
    take(at_profile_, profile_);
  }

  void fill() {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const std::size_t column = std::min(lane, modes_.size() - 1);
      const ColumnModes& from = *modes_[column];
      const std::vector<double> placed = placed_amplitudes(*cases_[column], from);
      const auto put = [lane](const Row<Number>& row, std::size_t entry, double value) {
        row.data[entry * lanes + lane] = static_cast<Each>(value);
      };
      for (std::size_t m = 0; m < from.count(); ++m) {
        put(rows.decay_per_s, m, from.conduction.decay_per_s()[m]);
        put(rows.at_surface, m, from.at_surface[m]);
        put(rows.amplitude, m, placed[m]);
        put(in_mean_, m, from.in_mean[m]);
        put(in_gradient_, m, from.in_gradient[m]);
        put(stored_j_m2_, m, from.stored_j_m2[m]);
        for (std::size_t k = 0; k < probe_count; ++k)
          put(at_probe_, m * probe_count + k, from.at_probe[k][m]);
        for (std::size_t k = 0; k < heat_points; ++k) {
          put(at_heat_, m * heat_points + k, from.at_heat[k][m]);
          put(from_heat_, m * heat_points + k, from.from_heat[k][m]);
        }
        for (std::size_t p = 0; p < profile_; ++p)
          put(at_profile_, p * rows.modes + m, from.at_profile[p][m]);
      }
    }
  }

  Cases cases_;
  std::vector<const ColumnModes*> modes_;
  std::size_t profile_ = 0;
  hwy::AlignedFreeUniquePtr<Each[]> memory_;
  Row<Number> in_mean_;
  Row<Number> in_gradient_;
  Row<Number> stored_j_m2_;
  Row<Number> at_probe_;  // of a mode all probes, then of the next; the next two likewise
  Row<Number> at_heat_;
  Row<Number> from_heat_;
  Row<Number> at_profile_;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
