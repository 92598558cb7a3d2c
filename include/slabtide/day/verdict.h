#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/caution.h"

namespace slabtide {

/// Whether to pour.
enum class Verdict { good, care, think_again };

std::string_view verdict_words(Verdict verdict);

struct Judgement {
  Verdict verdict = Verdict::good;
  std::vector<std::string> reasons;  ///< titles of the cautions behind the verdict
};

/// What the cautions come to: any `stop` says think again, any `caution` care.
Judgement judge(const std::vector<Caution>& cautions);

}  // namespace slabtide
