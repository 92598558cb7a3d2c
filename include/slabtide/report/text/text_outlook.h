#pragma once

#include <string>

#include "slabtide/day/plan/outlook.h"
#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The drying rate at which its bar is full: the day's fastest, 1.2 kg/m²h (ours) where none is.
double full_drying_kg_m2_h(const Outlook& outlook);

/// The day at a glance: the verdict, the hours as a table with bars, the findings.
std::string text_outlook(const PlannedPour& facts, const Outlook& outlook, const TextStyle& style);

}  // namespace slabtide
