// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_LANE_MESH_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_LANE_MESH_INL_H
#undef SLABTIDE_SLAB_LANE_MESH_INL_H
#else
#define SLABTIDE_SLAB_LANE_MESH_INL_H
#endif

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <hwy/aligned_allocator.h>

#include "slab/column/column_batch.h"
#include "slab/column/column_mesh.h"
#include "slab/column/lane_traits-inl.h"
#include "slab/process/conduction-inl.h"
#include "slab/process/hydration.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// Hydration of the slab's cells.
template <class Number>
struct HeatRows {
  Row<Number> age_h;         // equivalent, at 21.1 °C
  Row<Number> rate;          // hours per hour, now
  Row<Number> degree;        // for which heat had been released when it was last predicted
  Row<Number> rise_per_h;    // of the rate, since heat was last predicted
  Row<Number> degree_per_s;  // since then
  Row<Number> j_m2;          // released by one unit of degree
};

/// Several columns divided into cells, with all their rows in one block of memory. Columns with
/// fewer cells (formed faces have no ground) are padded with cells that no heat flows into.
template <class Number>
class LaneMesh {
 public:
  LaneMesh(const ColumnBatch& batch, Cases cases) : cases_(cases) {
    for (const ColumnCase* each : cases) meshes_.push_back(column_mesh(*each, batch.settings));
    slab_cells = meshes_.front().slab_cells;
    for (const ColumnMesh& mesh : meshes_) cells_ = std::max(cells_, mesh.grid.cells());
    lay_out();
    fill_conduction();
    fill_slab();
    place_probes();
  }

  ConductionRows<Number> conduction;
  HeatRows<Number> heat;
  std::size_t slab_cells = 0;
  Row<Number> mean_weight;      // a cell's weight in the slab's mean
  Row<Number> gradient_weight;  // and in its gradient
  Row<Number> nodes_c;          // the surface, then the cells

  /// The temperature at a probe, 0 to 3: top, work, deep, middle.
  Number probe_c(std::size_t probe) const {
    HWY_ALIGN std::array<double, lanes> above_c;
    HWY_ALIGN std::array<double, lanes> below_c;
    for (std::size_t i = 0; i < lanes; ++i) {
      const double* node = nodes_c.data + node_[probe][i];
      above_c[i] = node[0];
      below_c[i] = node[lanes];
    }
    const Number above = Memory<Number>::load(above_c.data());
    return above + Memory<Number>::load(fraction_[probe].data()) *
                       (Memory<Number>::load(below_c.data()) - above);
  }

  Number stored_j_m2() const {
    Number sum = 0.0;
    for (std::size_t i = 0; i < cells_; ++i) {
      sum += conduction.capacity_j_m2k[i] * conduction.cells_c[i];
    }
    return sum;
  }

  Number weighted_c(const Row<Number>& weight) const {
    Number sum = 0.0;
    for (std::size_t i = 0; i < slab_cells; ++i) sum += weight[i] * conduction.cells_c[i];
    return sum;
  }

 private:
  static constexpr std::size_t lanes = Memory<Number>::columns;
  static constexpr std::size_t probes = 4;

  void lay_out() {
    const std::size_t rows = 10 * cells_ + 2 + 8 * slab_cells;
    memory_ = hwy::AllocateAligned<double>(rows * lanes);
    std::fill_n(memory_.get(), rows * lanes, 0.0);
    double* next = memory_.get();
    const auto take = [&next](std::size_t entries) {
      double* const row = next;
      next += entries * lanes;
      return row;
    };
    nodes_c.data = take(cells_ + 1);
    conduction.cells = cells_;
    conduction.cells_c.data = nodes_c.data + lanes;
    conduction.conductance_w_m2k.data = take(cells_ + 1);
    for (Row<Number>* each :
         {&conduction.capacity_j_m2k, &conduction.stage_c, &conduction.rate_w_m2k,
          &conduction.inverse, &conduction.from_above, &conduction.from_below,
          &conduction.source_w_m2, &conduction.eliminated_c}) {
      each->data = take(cells_);
    }
    for (Row<Number>* each : {&heat.age_h, &heat.rate, &heat.degree, &heat.degree_per_s,
                              &heat.rise_per_h, &heat.j_m2, &mean_weight, &gradient_weight}) {
      each->data = take(slab_cells);
    }
  }

  const ColumnMesh& mesh(std::size_t lane) const {
    return meshes_[std::min(lane, meshes_.size() - 1)];
  }

  const ColumnCase& column(std::size_t lane) const {
    return *cases_[std::min(lane, cases_.size() - 1)];
  }

  void fill_conduction() {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const ColumnMesh& from = mesh(lane);
      const std::size_t own = from.grid.cells();
      for (std::size_t i = 0; i < cells_; ++i) {
        conduction.capacity_j_m2k.data[i * lanes + lane] =
            i < own ? from.grid.capacity_j_m2k[i] : 1.0;
        conduction.conductance_w_m2k.data[i * lanes + lane] =
            i < own ? from.grid.conductance_w_m2k[i] : 0.0;
        conduction.cells_c.data[i * lanes + lane] =
            i < slab_cells || i >= own
                ? column(lane).concrete_c
                : ground_at_c(column(lane), from.grid.depth_m[i] - column(lane).thickness_m);
      }
      if (from.bottom.kind == BottomKind::fixed_temperature) {
        conduction.conductance_w_m2k.data[cells_ * lanes + lane] = from.grid.conductance_w_m2k[own];
      }
    }
    conduction.bottom_c = each_lane<Number>(
        meshes_.size(), [this](std::size_t i) { return meshes_[i].bottom.fixed_c; });
  }

  /// The gradient is top minus bottom of the straight line that has the slab's first moment about
  /// its middle.
  void fill_slab() {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const ConductionGrid& grid = mesh(lane).grid;
      const double thickness_m = column(lane).thickness_m;
      const double j_m3 = heat_capacity_of_hydration_j_m3(column(lane).mix->hydration);
      double straight = 0.0;  // moment of a line that falls by 1 over the thickness
      for (std::size_t i = 0; i < slab_cells; ++i) {
        const double arm_m = 0.5 * thickness_m - grid.depth_m[i];
        straight += grid.thickness_m[i] * arm_m * arm_m / thickness_m;
      }
      for (std::size_t i = 0; i < slab_cells; ++i) {
        const double arm_m = 0.5 * thickness_m - grid.depth_m[i];
        mean_weight.data[i * lanes + lane] = grid.thickness_m[i] / thickness_m;
        gradient_weight.data[i * lanes + lane] = grid.thickness_m[i] * arm_m / straight;
        heat.j_m2.data[i * lanes + lane] = j_m3 * grid.thickness_m[i];
      }
    }
  }

  void place_probes() {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const ProbeDepths depths = probe_depths(column(lane).thickness_m);
      const std::array<double, probes> depth_m{depths.top_m, depths.work_m, depths.deep_m,
                                               depths.middle_m};
      for (std::size_t k = 0; k < probes; ++k) {
        const ProbePlace place = probe_place(mesh(lane).grid, depth_m[k]);
        node_[k][lane] = place.above * lanes + lane;
        fraction_[k][lane] = place.fraction;
      }
    }
  }

  Cases cases_;
  std::vector<ColumnMesh> meshes_;
  std::size_t cells_ = 0;
  hwy::AlignedFreeUniquePtr<double[]> memory_;
  std::array<std::array<std::size_t, lanes>, probes> node_;
  HWY_ALIGN std::array<std::array<double, lanes>, probes> fraction_;
};

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
