#pragma once

#include "report/markup/page_template.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// For page/agenda.html: what happens, in order: crew and trucks arrive, forms come off, main
/// windows open and close, saws start and must be done.
View agenda_view(const PlannedPour& facts);

}  // namespace slabtide
