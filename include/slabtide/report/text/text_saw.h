#pragma once

#include <cstddef>
#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// Joints and cuts of the day for a terminal, 80 columns: how each zone's joints can be made, then
/// the cuts in working order for every saw on hand (for both kinds if there is none), then what to
/// watch for when sawing. Ends in a newline.
std::string text_saw(const PlannedPour& facts, const TextStyle& style);

/// Of those only the cuts in working order, with the saws that they are to be made with; empty
/// where nothing is sawn.
std::string text_cuts(const PlannedPour& facts, const TextStyle& style);

/// How a zone's joints can be made, in a sentence: "cut at 14:46 with the early-entry saw (the wet
/// saw could start at 16:30), earliest cut due by 19:35; or tool them while plastic, 11:38-12:39".
/// Without a full stop.
std::string joint_choice_words(const PlannedPour& facts, std::size_t zone);

/// The saw to use, and what must wait for it: "wet saw, before the blanket goes on".
std::string saw_to_use_words(const PlannedPour& facts, std::size_t zone, SawKind saw);

/// What to do where no saw on hand is in time for a zone: "tool the joints, 11:38-12:39".
std::string instead_of_saw_words(const PlannedPour& facts, std::size_t zone);

/// "proposed: 3 joints, 4 panels up to 7 by 6 ft (allowed 12 ft, 1.5 to 1)".
std::string joints_words(const ZoneJoints& joints, const Job& job);

}  // namespace slabtide
