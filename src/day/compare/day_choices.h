#pragma once

#include "choice_list.h"

namespace slabtide {

// Choices about the day: its hours, crew, shade and wind protection, and saws.

void add_start_choices(const ChoiceContext& context, ChoiceList& list);
void add_order_choice(const ChoiceContext& context, ChoiceList& list);
void add_crew_choices(const ChoiceContext& context, ChoiceList& list);
void add_shelter_choices(const ChoiceContext& context, ChoiceList& list);
void add_saw_choice(const ChoiceContext& context, ChoiceList& list);
/// Whether the first concrete comes before sunrise.
bool starts_in_the_dark(const Job& job);
/// Why a pour cannot start then; empty if it can.
std::string start_fault(const Job& job, const CompareRules& rules);

}  // namespace slabtide
