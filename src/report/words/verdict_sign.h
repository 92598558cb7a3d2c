#pragma once

#include <string>
#include <string_view>

#include "slabtide/day/plan/verdict.h"

namespace slabtide {

/// "✓", "!" or "✕": never without the verdict's words beside it.
std::string_view verdict_sign(Verdict verdict);

/// "fast drying, dew": the reasons, the worst first.
std::string reasons_words(const Judgement& judged);

}  // namespace slabtide
