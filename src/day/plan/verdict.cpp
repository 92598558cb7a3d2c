#include "slabtide/day/plan/verdict.h"

#include <algorithm>
#include <array>

namespace slabtide {

namespace {

/// A verdict in the JSON, as a heading, and in a table.
struct VerdictWords {
  std::string_view id;
  std::string_view heading;
  std::string_view in_short;
};

/// In the order of `Verdict`.
constexpr std::array<VerdictWords, 3> every_verdict{
    {{"good", "Good to pour", "good"},
     {"care", "Pour with care", "care"},
     {"think_again", "Think again", "think again"}}};

const VerdictWords& words_of(Verdict verdict) {
  return every_verdict.at(static_cast<std::size_t>(verdict));
}

}  // namespace

std::string_view verdict_id(Verdict verdict) { return words_of(verdict).id; }

std::string_view verdict_words(Verdict verdict) { return words_of(verdict).heading; }

std::string_view verdict_in_short(Verdict verdict) { return words_of(verdict).in_short; }

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
