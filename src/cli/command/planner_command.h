#pragma once

#include "command.h"

namespace slabtide {

/// `slabtide planner`: the page to draw and plan a pour in.
extern const Command planner_command;

}  // namespace slabtide
