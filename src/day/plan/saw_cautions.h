#pragma once

#include "caution_watch.h"

// Rules about joints and sawing; cautions.cpp calls them with the others.

namespace slabtide {

void watch_joints(Watch& watch);
void watch_saws(Watch& watch);
/// Notes that apply whenever there is something to saw.
void add_saw_notes(Watch& watch);

}  // namespace slabtide
