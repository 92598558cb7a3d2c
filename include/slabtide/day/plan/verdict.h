#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/caution.h"

namespace slabtide {

/// Whether to pour.
enum class Verdict { good, care, think_again };

/// As it heads a page: "Pour with care".
std::string_view verdict_words(Verdict verdict);

/// A verdict and what it rests on.
struct Judgement {
  Verdict verdict = Verdict::good;
  std::vector<std::string> reasons;  ///< titles of the cautions behind the verdict
};

/// What the cautions come to: any `stop` says think again, any `caution` care.
Judgement judge(const std::vector<Caution>& cautions);

}  // namespace slabtide
