#pragma once

#include <map>
#include <string>
#include <vector>

#include "slabtide/day/compare/choice.h"
#include "slabtide/day/compare/choice_figures.h"
#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// What the functions that make choices need to know.
struct ChoiceContext {
  const PlannedPour& ordered;
  const ChoiceFigures& figures;  ///< of the job as ordered
  const Job& job = ordered.job;
  const PourRun& run = ordered.run;
  const DayPlan& plan = ordered.plan;
  const CompareRules& rules = ordered.practice.compare;

  /// Whether the day as ordered has a caution or a stop of any of these codes.
  bool fears(std::initializer_list<std::string_view> codes) const;
  /// Whether the crew runs late enough to matter, on the likely day or a bad one.
  bool runs_late() const { return figures.bad_day_late_min > rules.worth_min; }
};

/// A choice as it is offered: what it is and is called, and what it changes.
struct OfferedChoice {
  ChoiceKind kind = ChoiceKind::as_ordered;
  std::string label;
  std::string brief;  ///< for a table, joined with another
  std::string words;
  OptionNote change;
};

/// Collects choices without duplicates.
class ChoiceList {
 public:
  explicit ChoiceList(const ChoiceContext& context) : context_(context) {}

  /// A change that is not possible, or whose job equals an earlier one, is recorded as left out.
  void offer(OfferedChoice offered);
  /// A change that no note tells of.
  void add(ChoiceKind kind, std::string label, std::string words, Job job);
  void leave_out(std::string label, std::string why);
  Choices take() { return std::move(choices_); }

 private:
  void keep(Choice choice);

  const ChoiceContext& context_;
  Choices choices_;
  std::map<std::string, std::string> seen_;  ///< signature and label
};

/// Equal for two jobs derived from the same job if their days are the same: the pour's signature
/// with the crew and the saws.
std::string day_signature(const Job& job);

}  // namespace slabtide
