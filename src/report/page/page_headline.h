#pragma once

#include "report/markup/page_template.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// For page/headline.html: whether to pour and why, the three most important times (the first
/// window opens, the last closes, the first cut is due), and the tightest window.
View headline_view(const PlannedPour& facts);

/// For its verdict alone: the words, their class and sign, and the reasons.
View verdict_view(const Judgement& judged);

}  // namespace slabtide
