#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "starter_job.h"

namespace slabtide {

/// What the questions leave to be done with the job.
struct StarterWish {
  std::string path;  ///< where it is to be written
  bool wants_forecast = false;
};

/// Asks for the place, the day, the finish, the size, the sunny side, the forecast and the file,
/// and puts the answers into the job; an answer that cannot be is asked for again. An empty answer
/// takes what stands in brackets. Empty if `in` ends before all is answered.
std::optional<StarterWish> ask_for_starter(StarterJob& job, std::istream& in, std::ostream& out);

}  // namespace slabtide
