#pragma once

#include <map>
#include <string>
#include <vector>

#include "slabtide/day/compare/choice.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/practice/practice.h"

namespace slabtide {

/// What the functions that make choices need to know.
struct ChoiceContext {
  const Job& job;
  const PourRun& run;
  const DayPlan& plan;
  const CompareRules& rules;
};

/// Collects choices without duplicates.
class ChoiceList {
 public:
  /// A job that equals an earlier one is recorded as left out.
  void add(ChoiceKind kind, std::string label, std::string words, Job job);
  void leave_out(std::string label, std::string why);
  Choices take() { return std::move(choices_); }

 private:
  Choices choices_;
  std::map<std::string, std::string> seen_;  ///< signature and label
};

}  // namespace slabtide
