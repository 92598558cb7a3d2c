#pragma once

#include "slabtide/job/model/job.h"

namespace slabtide {

/// The same job in the one form that all equivalent drawings share, so that results computed from
/// it are the same to the bit. The zones are in placing order. Places are measured from the first
/// point of the first zone placed, rounded to 2^-20 m (about a micrometre): no drawing is meant
/// more finely, and rounding errors of coordinates far from a drawing's origin are much smaller.
/// `drawing_origin` moves accordingly. Consecutive points that become equal are merged.
///
/// A job already in this form is unchanged. `read_job` returns every job in it.
Job canonical(Job job);

/// Where a place in the job lies on the user's drawing.
Point on_drawing(Point place, const Job& job);

}  // namespace slabtide
