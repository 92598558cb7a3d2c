#pragma once

#include <iosfwd>
#include <string>

#include "slabtide/report/plan_facts.h"
#include "slabtide/report/text_style.h"

namespace slabtide {

/// Colour where `out` is the program's own standard output, that is a terminal, and
/// NO_COLOR is not set (no-color.org) nor TERM dumb.
TextStyle style_for(const std::ostream& out);

/// Writes the plan to every --write file; the ending chooses the format. All endings are
/// checked before the first file is touched.
int write_plan_files(const std::vector<std::string>& paths, const PlanFacts& facts,
                     std::ostream& err);

/// The endings write_plan_files knows, for a check before the computing: empty where all
/// are known, else the fault in words.
std::string write_fault(const std::vector<std::string>& paths);

}  // namespace slabtide
