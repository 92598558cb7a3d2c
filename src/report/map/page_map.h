#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The map of a page, as markup: the site to scale at one hour, with its sun and shade and what is
/// ready, and over it lines of equal time and the direction of work; beside it the times as a
/// table. With data/page/figures.js it offers the choice of an operation and of the hour. Without
/// the script it stands still at an hour, with the times of all operations. Uses
/// data/page/palette.css and figures.css.
std::string page_map(const PlannedPour& facts);

}  // namespace slabtide
