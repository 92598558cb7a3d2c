#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/caution.h"

namespace slabtide {

/// Whether to pour.
enum class Verdict { good, care, think_again };

/// The id used in the JSON: "think_again".
std::string_view verdict_id(Verdict verdict);
/// The heading of a page: "Pour with care".
std::string_view verdict_words(Verdict verdict);
/// A cell of a table: "care".
std::string_view verdict_in_short(Verdict verdict);

/// A verdict and the reasons for it.
struct Judgement {
  Verdict verdict = Verdict::good;
  std::vector<std::string> reasons;  ///< titles of the cautions behind it, the worst loss first
};

/// The verdict from the cautions: any `stop` means think again, any `caution` means care.
Judgement judge(const std::vector<Caution>& cautions);

}  // namespace slabtide
