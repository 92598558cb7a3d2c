#pragma once

#include "report/markup/page_template.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// What every page says of a caution besides its time: the level, the place, what is wrong and what
/// to do about it, the source. `text` is the caution's own, or that of several told as one.
void put_caution(View& view, const Caution& caution, std::string_view text, const Job& job);

/// For page/cautions.html: what to watch for, with times.
View cautions_view(const PlannedPour& facts);

/// For page/sources.html: weather, mix, assumptions, and where each number comes from.
View sources_view(const PlannedPour& facts);

}  // namespace slabtide
