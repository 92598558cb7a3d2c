#pragma once

#include <cstddef>
#include <string>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// A length as a tape reads it: "14 ft 3 in" to the nearest inch, "4.27 m" to the nearest
/// centimetre.
std::string tape_length_words(double m, UnitSystem units);

/// Where a joint of a zone lies, as it is snapped: "14 ft 3 in from the house end". Measured square
/// to the joint at its middle, or along the middle of a walkway that it crosses, from the end that
/// has a structure at it, else a neighboring zone, else from the north or east end. Of an end that
/// is not parallel to the joint the farthest point counts. Error: std::out_of_range if the job has
/// no such zone.
std::string tape_words(const Joint& joint, std::size_t zone, const Job& job);

}  // namespace slabtide
