#pragma once

namespace slabtide {

/// A slab or finish that may be lost on this part of the days is told: one in ten (ours).
inline constexpr double told_loss_fraction = 0.1;

}  // namespace slabtide
