#include "slabtide/day/plan/verdict.h"

#include <algorithm>

namespace slabtide {

std::string_view verdict_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::good:
      return "Good to pour";
    case Verdict::care:
      return "Pour with care";
    case Verdict::think_again:
      return "Think again";
  }
  return "Think again";
}

Judgement judge(const std::vector<Caution>& cautions) {
  Judgement judged;
  for (const Caution& caution : cautions) {
    if (caution.level == CautionLevel::note) continue;
    const Verdict weight =
        caution.level == CautionLevel::stop ? Verdict::think_again : Verdict::care;
    if (weight > judged.verdict) {
      judged.verdict = weight;
      judged.reasons.clear();
    }
    const bool said = std::find(judged.reasons.begin(), judged.reasons.end(), caution.title) !=
                      judged.reasons.end();
    if (weight == judged.verdict && !said) judged.reasons.push_back(caution.title);
  }
  return judged;
}

}  // namespace slabtide
