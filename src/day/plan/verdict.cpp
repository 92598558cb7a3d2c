#include "slabtide/day/plan/verdict.h"

#include <algorithm>

namespace slabtide {

std::string_view verdict_id(Verdict verdict) {
  switch (verdict) {
    case Verdict::good:
      return "good";
    case Verdict::care:
      return "care";
    case Verdict::think_again:
      return "think_again";
  }
  return "think_again";
}

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
  std::vector<const Caution*> weighty;
  for (const Caution& caution : cautions) {
    if (caution.level != CautionLevel::note) weighty.push_back(&caution);
  }
  std::stable_sort(weighty.begin(), weighty.end(), [](const Caution* a, const Caution* b) {
    return a->level != b->level ? a->level > b->level : a->loss < b->loss;
  });
  Judgement judged;
  if (weighty.empty()) return judged;
  const CautionLevel level = weighty.front()->level;
  judged.verdict = level == CautionLevel::stop ? Verdict::think_again : Verdict::care;
  for (const Caution* caution : weighty) {
    const bool said = std::find(judged.reasons.begin(), judged.reasons.end(), caution->title) !=
                      judged.reasons.end();
    if (caution->level == level && !said) judged.reasons.push_back(caution->title);
  }
  return judged;
}

}  // namespace slabtide
