#pragma once

#include "slabtide/job/model/job.h"

namespace slabtide {

/// The same job, written down the one way that all drawings of it share, so that what is computed
/// from it is the same to the bit. The zones stand in the order they are placed. Places are
/// measured from the first point of the zone placed first, to the next 2^-20 m (a micrometre): what
/// is drawn cannot be meant more finely, and the rounding of figures far from a drawing's origin
/// is far finer. `drawing_origin` moves along. Points that become one are one.
///
/// A job that has this form keeps it. `read_job` gives every job in it.
Job canonical(Job job);

/// Where a place of the job lies on the user's drawing.
Point on_drawing(Point place, const Job& job);

}  // namespace slabtide
