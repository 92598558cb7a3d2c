#pragma once

#include <vector>

#include "slabtide/job/model/mix.h"
#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// The model of `mix` with `admixtures` (the mix's own, or a zone's).
/// Error: std::invalid_argument for values that read_job refuses.
MixModel mix_model(const Mix& mix, const std::vector<Admixture>& admixtures);

}  // namespace slabtide
