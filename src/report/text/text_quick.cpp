#include "text_quick.h"

#include <fmt/format.h>

#include "report/words/part_table.h"
#include "text_cautions.h"
#include "text_parts.h"

namespace slabtide {

namespace {

std::string saw_rows(const PlannedPour& facts, const TextStyle& style) {
  std::string text;
  for (const ZonePlan& zone : facts.plan.zones) {
    for (const SawPlan& saw : zone.saws) {
      text += style.paragraph(saw_sentence(saw, zone.name, facts.job), 2, 6);
    }
  }
  return text;
}

}  // namespace

std::string text_quick(const PlannedPour& facts, const TextStyle& style) {
  std::vector<PartPlan> columns;
  for (const ZonePlan& zone : facts.plan.zones) {
    columns.push_back(zone.whole);
    columns.back().name = zone.name;
  }
  std::vector<const PartPlan*> parts;
  for (const PartPlan& column : columns) parts.push_back(&column);
  return style.finished(
      text_opening(facts, style) + "\n" +
      part_table(parts, facts.job.zones.front().finish, "", facts.job, style.width) +
      saw_rows(facts, style) + "\n" + text_cautions(facts.plan.cautions, facts.job, style) + "\n" +
      text_assumptions(facts, style));
}

}  // namespace slabtide
