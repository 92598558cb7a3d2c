#include "slabtide/report/text/text_plan.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "core/text.h"
#include "job/geometry/placing_sequence.h"
#include "job/model/wording.h"
#include "report/words/cost_words.h"
#include "report/words/decimals.h"
#include "report/words/part_table.h"
#include "report/words/validate_facts.h"
#include "report/words/window_notes.h"
#include "slabtide/day/crew/sawing.h"
#include "slabtide/report/text/text_crew.h"
#include "slabtide/report/text/text_saw.h"
#include "text_cautions.h"
#include "text_order.h"
#include "text_parts.h"

namespace slabtide {

namespace {

std::string zone_heading(const ZonePlan& plan, const Zone& zone, const Job& job,
                         const TextStyle& style) {
  const std::string what = fmt::format(
      "{}, {}, {} thick, {}", finish_words(zone.finish), area_words(plan.area_m2, job.units),
      thickness_words(zone.thickness_m, job.units), volume_words(plan.volume_m3, job.units));
  const std::string placed = fmt::format("placed {} to {}", day_clock(plan.placed.start, job),
                                         day_clock(plan.placed.end, job));
  const std::string title = style.titled(plan.name, what);
  const bool is_one_line = title.find('\n') + 1 == title.size();
  return is_one_line ? style.both_ends(title.substr(0, title.size() - 1), placed)
                     : title + style.paragraph(placed, 2, 4);
}

std::string limits_line(const SawPlan& saw, const Job& job) {
  return fmt::format(
      "cut before it pulls at half its strength ({}) and before the surface is {} below its peak "
      "({})",
      day_clock(saw.stress_limit, job), temperature_difference_words(saw.surface_fall_k, job.units),
      day_clock(saw.surface_limit, job));
}

/// "8 in 10: early-entry saw opens 14:03-15:59, cut due 19:14-20:05"; empty without bands.
std::string saw_band_line(const ZonePlan& plan, const Job& job) {
  std::string words;
  std::string due;
  for (const SawPlan& saw : plan.saws) {
    const std::string opens = band_words(saw.opens_band, job);
    if (opens.empty() || !(saw.on_hand || job.pour.saws.empty())) continue;
    words += fmt::format("{}{} opens {}", words.empty() ? "" : ", ", saw_words(saw.kind), opens);
    due = band_words(saw.latest_band, job);
  }
  if (words.empty()) return {};
  return fmt::format("8 in 10: {}{}", words,
                     due.empty() ? std::string() : fmt::format(", cut due {}", due));
}

std::string saw_block(const ZonePlan& plan, const Job& job, const TextStyle& style) {
  std::string text;
  for (const SawPlan& saw : plan.saws) {
    const bool worth_saying = saw.on_hand || job.pour.saws.empty();
    if (worth_saying) text += style.paragraph(saw_sentence(saw, {}, job), 2, 6);
  }
  if (!text.empty()) text += style.paragraph(limits_line(plan.saws.front(), job), 2, 6);
  const std::string sure = saw_band_line(plan, job);
  if (!sure.empty()) text += style.paragraph(sure, 2, 6);
  return text;
}

std::string face_lines(const ZonePlan& plan, const Job& job, const TextStyle& style) {
  std::string text;
  for (const FacePlan& face : plan.faces) {
    const std::string looks = face.facing_deg
                                  ? fmt::format(", facing {}", compass_words(*face.facing_deg))
                                  : std::string();
    const std::string opens = band_words(face.strip.opens_band, job);
    const std::string sure = opens.empty() ? opens : fmt::format(" (opens {}, 8 in 10)", opens);
    text += style.paragraph(fmt::format("{}{}: strip the form {}{}", face.name, looks,
                                        window_words(face.strip, job), sure),
                            2, 6);
  }
  return text;
}

std::string next_days_line(const ZonePlan& plan, const Job& job, const TextStyle& style) {
  std::string line;
  for (const Operation operation :
       {Operation::walk, Operation::expose, Operation::wash, Operation::seal}) {
    const OperationWindow* window = plan.late_window(operation);
    if (window == nullptr) continue;
    line += fmt::format("{}{} {}", line.empty() ? "" : ", ", late_work_words(plan, operation),
                        later_words(*window, job));
  }
  return style.paragraph(line, 2, 6);
}

std::string notes_of(const PartPlan& part, const ZonePlan& plan, const TextStyle& style) {
  const std::string& where = part.name.empty() ? plan.name : part.name;
  std::string text;
  for (const std::string& note : window_notes(part)) {
    text += style.paragraph(fmt::format("{}, {}", where, note), 2, 6);
  }
  return text;
}

std::string zone_block(const ZonePlan& plan, const Zone& zone, const Job& job,
                       const TextStyle& style) {
  std::vector<const PartPlan*> parts;
  if (plan.parts.empty()) parts.push_back(&plan.whole);
  for (const PartPlan& part : plan.parts) parts.push_back(&part);

  std::string text = zone_heading(plan, zone, job, style);
  text += part_table(parts, zone.finish, "", job, style.width);
  for (const PartPlan* part : parts) text += notes_of(*part, plan, style);
  if (!plan.working_order.empty())
    text += style.paragraph(fmt::format("order: {}", plan.working_order), 2, 6);
  if (plan.border) {
    text += part_table({&*plan.border}, zone.border->finish, "", job, style.width);
  }
  text += face_lines(plan, job, style);
  text += saw_block(plan, job, style);
  text += next_days_line(plan, job, style);
  return text + "\n";
}

std::string place_in_zone(const Tightest& tightest) {
  return tightest.part.empty() ? tightest.zone : tightest.zone + ", " + tightest.part;
}

/// "pad: 44 min to stamp from 14:29"; a window that never opens has no minutes.
std::string tightest_words(const Tightest& tightest, const Job& job) {
  const std::string where = place_in_zone(tightest);
  if (!(tightest.minutes > 0.0)) {
    return fmt::format("{}: no good time to {}", where, operation_verb(tightest.operation));
  }
  return fmt::format("{}: {} min to {} from {}", where, fixed_words(tightest.minutes),
                     operation_verb(tightest.operation), day_clock(tightest.opens, job));
}

/// The cut that the sawing begins with, with the saw to use, and the one that is due first.
std::string first_cut_words(const PlannedPour& facts) {
  const auto first = first_cut(facts.plan.cuts, facts.plan.crew);
  if (!first) return {};
  const std::size_t zone = facts.plan.cuts.cuts[first->cut.cut].zone;
  std::string words = fmt::format("{}, cut at {}, {}", facts.job.zones[zone].name,
                                  day_clock(first->cut.starts, facts.job),
                                  saw_to_use_words(facts, zone, first->kind));
  const auto due_zone = first_due_zone(facts.plan.cuts);
  if (!due_zone) return words;
  const auto sawing = sawing_of(facts.plan.cuts, facts.plan.crew, facts.job, *due_zone);
  const std::string where =
      *due_zone == zone ? std::string() : fmt::format(" ({})", facts.job.zones[*due_zone].name);
  return fmt::format("{}; earliest cut due by {}{}{}", words, day_clock(sawing->due, facts.job),
                     where, sawing->late_min > 0 ? ", too late" : "");
}

/// The first cut to be made, and before it the zone, due first, that no saw on hand cuts in time.
std::string saw_headline(const PlannedPour& facts) {
  std::string first = first_cut_words(facts);
  const auto zone = first_without_saw(facts.plan.cuts);
  if (!zone) return first;
  const std::string due = day_clock(first_due(facts.plan.cuts, *zone), facts.job);
  return fmt::format("{} is likely to crack by {}, before a saw on hand is through: {}{}",
                     facts.job.zones[*zone].name, due, instead_of_saw_words(facts, *zone),
                     first.empty() ? first : ". " + first);
}

/// How sure the plan is and where the doubt comes from; empty without bands.
std::string sure_headline(const PlannedPour& facts, const TextStyle& style) {
  constexpr std::size_t heading_width = 11;
  if (!facts.plan.sureness) return {};
  const Sureness& sureness = *facts.plan.sureness;
  std::string causes;
  for (const DoubtCause& cause : told_causes(sureness)) {
    causes +=
        fmt::format("{}{} ({})", causes.empty() ? "" : ", ",
                    uncertain_input_words(cause.uncertain_input), percent_words(cause.fraction));
  }
  const std::string doubt = causes.empty() ? causes : fmt::format(" Biggest unknown: {}.", causes);
  const std::string how =
      sureness.either_way_min
          ? fmt::format("the main work opens within {} min either way on eight days in ten",
                        fixed_words(*sureness.either_way_min))
          : std::string(past_end_words);
  return style.entry(style.heading("Confidence"),
                     fmt::format("{}: {}.{}", sure_words(sure_word(sureness)), how, doubt), 0,
                     heading_width);
}

/// What the pour costs; empty without prices.
std::string cost_headline(const PlannedPour& facts, const TextStyle& style) {
  constexpr std::size_t heading_width = 11;
  const auto cost = cost_of_pour(facts);
  if (!cost || !facts.job.prices) return {};
  return style.entry(style.heading("Cost"), cost_sentence(*cost, facts.job.prices->currency), 0,
                     heading_width);
}

/// What has been observed so far comes first, because the plan below is adjusted to it.
std::string seen_headline(const PlannedPour& facts, const TextStyle& style) {
  constexpr std::size_t heading_width = 11;
  std::string text;
  for (const std::string& line : facts.plan.seen) {
    text += style.entry(style.heading("Seen"), line, 0, heading_width);
  }
  return text;
}

std::string headline(const PlannedPour& facts, const TextStyle& style) {
  constexpr std::size_t heading_width = 11;
  std::string text = seen_headline(facts, style) + verdict_line(judge(facts.plan.cautions), style);
  if (facts.plan.tightest) {
    const Tightest& tightest = *facts.plan.tightest;
    text += style.entry(style.heading("Tightest"), tightest_words(tightest, facts.job), 0,
                        heading_width);
  }
  const std::string saw = saw_headline(facts);
  if (!saw.empty()) text += style.entry(style.heading("First saw"), saw, 0, heading_width);
  return text + crew_headline(facts, style) + text_order(facts, style) +
         cost_headline(facts, style) + sure_headline(facts, style) + "\n";
}

}  // namespace

std::string text_plan(const PlannedPour& facts, const TextStyle& style) {
  validate(facts);
  std::string text = text_opening(facts, style);
  text.append(1, '\n').append(headline(facts, style));
  for (const std::size_t i : zones_in_order(facts.job)) {
    text += zone_block(facts.plan.zones[i], facts.job.zones[i], facts.job, style);
  }
  text += text_cautions(facts.plan.cautions, facts.job, style) + "\n";
  return style.finished(text + text_assumptions(facts, style));
}

}  // namespace slabtide
