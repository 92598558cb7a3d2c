#pragma once

#include <cstddef>
#include <string>

namespace slabtide {

/// A place on the slab. Names are for showing: a part is called after what the plan of the day
/// makes of it ("last 11 ft"), and is called otherwise when the forecast changes. What is the same
/// place is asked of ids alone.
///
/// A zone's id is its index in Job::zones, and in files its name there, which is the user's and no
/// other zone's. A part's id, the same in every file, says how the zone is cut and which piece it
/// is, counted along the line it is cut on, whichever gets ready first: "along-2-of-3" on a walk
/// from where placing begins, "west-1-of-2" from west to east, "south-1-of-2" from south to north,
/// "wall3-1-of-2" away from the job's third obstacle. It stays however far the forecast moves the
/// cuts; a part that a new plan does not have, as it cuts the zone otherwise, is the whole zone.
/// "border" is the border and "face-2" the second formed face as the job lists them; the whole of
/// a zone's field has an empty id.
struct PlaceId {
  std::size_t zone = 0;
  std::string part;

  friend bool operator==(const PlaceId&, const PlaceId&) = default;
};

}  // namespace slabtide
