#pragma once

#include "caution_watch.h"

namespace slabtide {

// Rules about the people: the heat they work in, and how they reach the work.

/// Heat index over OSHA's lower bands while the crew is on site; where the job tells hands apart,
/// how long each of them is there in that heat.
void watch_heat(Watch& watch);
/// Work that nobody's hours allow (`Task::any_hours`).
void watch_hours(Watch& watch);
/// Work in a zone that is reached only over others (`Zone::reached_over`), after those have been
/// finished and before they can be walked on.
void watch_way_in(Watch& watch);

}  // namespace slabtide
