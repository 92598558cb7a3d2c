// This file compiles itself once for each worthwhile instruction set; at run time the widest one
// that the machine has is used.
#define HWY_DISABLED_TARGETS \
  (HWY_SSSE3 | HWY_AVX3_DL | HWY_SVE | HWY_SVE2 | HWY_SVE_256 | HWY_SVE2_128 | HWY_RVV)
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "slab/column/column_core.cpp"
#include <hwy/foreach_target.h>
//
#include <hwy/highway.h>

#include "slab/column/column_core.h"
#include "slab/column/column_lanes-inl.h"
#include "slab/column/lanes-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide::HWY_NAMESPACE {
namespace {

void solve_lanes(const ColumnBatch& batch, Cases cases, std::span<ColumnSolution> solutions,
                 ColumnWorkspace& workspace) {
  ColumnLanes<Lanes>(batch, cases, solutions, workspace).run();
}

std::size_t lane_count() { return Memory<Lanes>::columns; }

}  // namespace
}  // namespace slabtide::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace slabtide {
namespace {

HWY_EXPORT(solve_lanes);
HWY_EXPORT(lane_count);

}  // namespace

void solve_side_by_side(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                        std::span<ColumnSolution> solutions, ColumnWorkspace& workspace) {
  HWY_DYNAMIC_DISPATCH(solve_lanes)(batch, cases, solutions, workspace);
}

std::size_t lanes_at_once() { return HWY_DYNAMIC_DISPATCH(lane_count)(); }

}  // namespace slabtide
#endif
