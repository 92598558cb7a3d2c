#pragma once

#include "caution_watch.h"

// The rules about joints and the saw; one list with the others (cautions.cpp).

namespace slabtide {

void watch_joints(Watch& watch);
void watch_saws(Watch& watch);
/// What holds whenever there is something to saw.
void add_saw_notes(Watch& watch);

}  // namespace slabtide
