#include "slabtide/report/text/text_saw.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "core/rounded.h"
#include "job/geometry/placing_sequence.h"
#include "job/model/covers.h"
#include "job/model/wording.h"
#include "report/words/part_table.h"
#include "report/words/tape_words.h"
#include "report/words/validate_facts.h"
#include "slabtide/core/units.h"
#include "slabtide/day/crew/sawing.h"
#include "text_cautions.h"
#include "text_parts.h"
#include "text_table.h"

namespace slabtide {

namespace {

constexpr std::size_t lead = 2;
constexpr std::size_t list_hang = 6;

/// Codes of the cautions that are shown with the saw.
constexpr std::array<std::string_view, 9> saw_codes{
    "joint_rule", "saw_too_late", "saw_not_enough", "saw_waits",     "saw_before_cover",
    "silica",     "wet_sawing",   "cracked_joint",  "forecast_short"};

const CutPlan& cuts_of(const PlannedPour& facts) { return facts.plan.cuts; }

bool is_used(const SawShift& shift, const Job& job) {
  return shift.on_hand || job.pour.saws.empty();
}

std::string due_words(const PlannedPour& facts, std::size_t zone) {
  const auto due = first_due(cuts_of(facts), zone);
  return due ? fmt::format("earliest cut due by {}", day_clock(*due, facts.job))
             : std::string("no cut due before the forecast ends");
}

SawShift shift_of(SawKind kind, const PlannedPour& facts) {
  return worked_shift(kind, cuts_of(facts), facts.plan.crew);
}

/// "the wet saw could start at 4:30 PM": the kinds of saw that could be in time, if somebody led
/// them, but for the one that the zone is cut with; either those that may be used or, as "the wet
/// saw, which could start at 4:30 PM", those that would have to be got.
std::string saws_in_time(const PlannedPour& facts, std::size_t zone, bool used) {
  const JointChoice& choice = cuts_of(facts).choices[zone];
  std::string words;
  for (const SawKind kind : choice.in_time) {
    const SawShift shift = shift_of(kind, facts);
    if (saw_of(choice.way) == kind || is_used(shift, facts.job) != used) continue;
    words += fmt::format("{}the {}{} could start at {}", words.empty() ? "" : ", or ",
                         saw_words(kind), used ? "" : ", which",
                         day_clock(first_start(shift, cuts_of(facts), zone), facts.job));
  }
  return words;
}

/// "cut at 2:46 PM with the early-entry saw", as the crew comes to it, and how late that is.
std::string cut_words(const ZoneSawing& sawing, const Job& job) {
  std::string words = fmt::format("cut at {} with the {}", day_clock(sawing.starts, job),
                                  saw_words(sawing.kind, job));
  if (sawing.late_min == 0) return words;
  return fmt::format("{}, up to {} too late, as nobody is free sooner", words,
                     duration_words(sawing.late_min));
}

bool is_cut_with(SawKind kind, const CutPlan& plan) {
  return std::any_of(plan.choices.begin(), plan.choices.end(),
                     [kind](const JointChoice& choice) { return saw_of(choice.way) == kind; });
}

/// True for a saw that could be used in place of the one that the joints are cut with.
bool is_spare(SawKind kind, const CutPlan& plan) {
  return !is_cut_with(kind, plan) &&
         std::any_of(kinds_of_saw.begin(), kinds_of_saw.end(),
                     [&plan](SawKind one) { return is_cut_with(one, plan); });
}

std::string largest_panel(const ZoneJoints& joints, UnitSystem units) {
  const auto largest = std::max_element(
      joints.panels.begin(), joints.panels.end(),
      [](const Panel& a, const Panel& b) { return rounded(a.length_m) < rounded(b.length_m); });
  return size_words(largest->length_m, largest->width_m, units);
}

std::string isolation_words(const Isolation& one, const Job& job) {
  if (one.tied && one.length_m == 0.0) {
    return "tied to a structure the plan does not show: every piece counts as tied";
  }
  const std::string along = distance_words(one.length_m, job.units);
  return one.tied ? fmt::format("tied to {} along {}: cuts start there", one.structure, along)
                  : fmt::format(
                        "isolation joint along {}, {}: foam or fiber strip, full depth, no dowels",
                        one.structure, along);
}

std::string zone_block(const PlannedPour& facts, std::size_t zone, const TextStyle& style) {
  const Zone& described = facts.job.zones[zone];
  const ZoneJoints& joints = cuts_of(facts).joints[zone];
  std::string text = style.titled(
      described.name, thickness_words(described.thickness_m, facts.job.units) + " thick");
  text += style.paragraph(joint_choice_words(facts, zone), lead, list_hang);
  text += style.paragraph(joints_words(joints, facts.job), lead, list_hang);
  for (const Isolation& one : joints.isolation) {
    text += style.paragraph(isolation_words(one, facts.job), lead, list_hang);
  }
  for (const JointFault& fault : joints.faults) {
    text += style.paragraph(fault_words(fault, facts.job), lead, list_hang);
  }
  return text + "\n";
}

std::string depths_words(const SawShift& shift, const Job& job) {
  std::vector<double> depths;
  for (const SawnCut& cut : shift.cuts) {
    if (std::find(depths.begin(), depths.end(), cut.depth_m) == depths.end()) {
      depths.push_back(cut.depth_m);
    }
  }
  std::sort(depths.begin(), depths.end());
  if (depths.size() == 1) return thickness_words(depths[0], job.units) + " deep";
  return fmt::format("{} to {} deep", thickness_words(depths.front(), job.units),
                     thickness_words(depths.back(), job.units));
}

std::string enough_words(const SawShift& shift) {
  if (shift.one_is_enough()) return "one saw is enough";
  if (shift.saws_needed) return fmt::format("one saw is not enough: use {}", *shift.saws_needed);
  return "no number of saws makes it in time";
}

std::string shift_heading(const SawShift& shift, const PlannedPour& facts, const TextStyle& style) {
  double length_m = 0.0;
  double minutes = 0.0;
  for (const SawnCut& cut : shift.cuts) {
    length_m += cuts_of(facts).cuts[cut.cut].cut.length_m;
    minutes += seconds_between(cut.starts, cut.ends) / seconds_per_minute;
  }
  std::string name = saw_words(shift.kind);
  name.front() = name.front() == 'w' ? 'W' : 'E';
  if (is_spare(shift.kind, cuts_of(facts))) name += " instead, if somebody is free for it";
  return style.paragraph(fmt::format("{}{}: {} cuts, {}, {:.0f} min at the saw, {}; {}",
                                     style.heading(name), shift.on_hand ? "" : " (not on hand)",
                                     shift.cuts.size(), distance_words(length_m, facts.job.units),
                                     minutes, depths_words(shift, facts.job), enough_words(shift)),
                         0, lead);
}

std::string_view short_reason(CutReason reason) {
  switch (reason) {
    case CutReason::corner:
      return "corner";
    case CutReason::tied_edge:
      return "tie";
    case CutReason::longest_run:
      return "mid-run";
    case CutReason::next_along:
      return "next";
  }
  return {};
}

std::string due_cell(const SawnCut& sawn, const PlannedCut& planned, const Job& job) {
  return (planned.latest ? day_clock(*planned.latest, job) : std::string("-")) +
         (sawn.late ? "*" : "");
}

/// The cuts in lines that wrap, under the names of their zones: for names too long for a table.
std::string cut_lines(const SawShift& shift, const PlannedPour& facts, const TextStyle& style) {
  constexpr std::size_t time_hang = 16;  // behind "Thu 10:55 AM"
  std::string text;
  std::optional<std::size_t> zone;
  for (const SawnCut& sawn : shift.cuts) {
    const PlannedCut& planned = cuts_of(facts).cuts[sawn.cut];
    if (zone != planned.zone) {
      zone = planned.zone;
      text += style.paragraph(facts.job.zones[planned.zone].name, lead, list_hang);
    }
    text +=
        style.entry(day_clock(sawn.starts, facts.job),
                    fmt::format("due by {}: {} long, {}, {}", due_cell(sawn, planned, facts.job),
                                distance_words(planned.cut.length_m, facts.job.units),
                                tape_words(planned.cut.joint, planned.zone, facts.job),
                                short_reason(planned.cut.reason)),
                    2 * lead, time_hang);
  }
  return text;
}

std::vector<std::string> cut_row(const SawnCut& sawn, const PlannedPour& facts) {
  const Job& job = facts.job;
  const PlannedCut& planned = cuts_of(facts).cuts[sawn.cut];
  return {day_clock(sawn.starts, job),
          due_cell(sawn, planned, job),
          job.zones[planned.zone].name,
          tape_words(planned.cut.joint, planned.zone, job),
          distance_words(planned.cut.length_m, job.units),
          std::string(short_reason(planned.cut.reason))};
}

std::string shift_block(const SawShift& shift, const PlannedPour& facts, const TextStyle& style) {
  if (shift.cuts.empty()) {
    return style.paragraph(fmt::format("{}: takes no cut before the forecast ends",
                                       style.heading(saw_words(shift.kind))),
                           0, lead) +
           "\n";
  }
  std::vector<std::vector<std::string>> rows;
  bool any_late = false;
  for (const SawnCut& cut : shift.cuts) {
    rows.push_back(cut_row(cut, facts));
    any_late = any_late || cut.late;
  }
  const auto table = uncut_table({{"cut at", false, 0},
                                  {"due by", false, 0},
                                  {"zone", false, 0},
                                  {"where", false, 0},
                                  {"long", false, 1},
                                  {"why", false, 2}},
                                 std::move(rows), style.width);
  std::string text =
      shift_heading(shift, facts, style) + (table ? *table : cut_lines(shift, facts, style));
  if (any_late) text += style.paragraph("* not cut through by then", lead, list_hang);
  if (!shift.never_open.empty()) {
    text += style.paragraph(
        fmt::format("{} more cannot be cut before the forecast ends", shift.never_open.size()),
        lead, list_hang);
  }
  return text + "\n";
}

std::vector<Caution> saw_cautions(const std::vector<Caution>& all) {
  std::vector<Caution> found;
  for (const Caution& caution : all) {
    if (std::find(saw_codes.begin(), saw_codes.end(), caution.code) != saw_codes.end()) {
      found.push_back(caution);
    }
  }
  return found;
}

}  // namespace

std::string joints_words(const ZoneJoints& joints, const Job& job) {
  const std::size_t n = joints.joints.size();
  return fmt::format("{}: {} joint{}, {} panel{} up to {} (allowed {}, {:g} to 1)",
                     joints.drawn ? "as drawn" : "proposed", n, n == 1 ? "" : "s",
                     joints.panels.size(), joints.panels.size() == 1 ? "" : "s",
                     largest_panel(joints, job.units),
                     distance_words(joints.limits.spacing_m, job.units), joints.limits.aspect);
}

std::string joint_choice_words(const PlannedPour& facts, std::size_t zone) {
  const JointChoice& choice = cuts_of(facts).choices[zone];
  if (choice.way == JointWay::none_needed) return "no joint to cut";
  const std::string tool_at = window_words(choice.tooled, facts.job);
  const std::string due = due_words(facts, zone);
  if (choice.way != JointWay::tool) {
    const ZoneSawing sawing = sawing_of(cuts_of(facts), facts.plan.crew, facts.job, zone).value();
    const std::string others = saws_in_time(facts, zone, true);
    return fmt::format("{}{}, {}; or tool them while plastic, {}", cut_words(sawing, facts.job),
                       others.empty() ? others : fmt::format(" ({})", others), due, tool_at);
  }
  const std::string others = saws_in_time(facts, zone, false);
  return fmt::format("tool them while plastic, {}: no saw on hand makes it in time ({}){}", tool_at,
                     due, others.empty() ? others : fmt::format("; or get {}", others));
}

std::string saw_to_use_words(const PlannedPour& facts, std::size_t zone, SawKind saw) {
  const auto cover = curing_cover(facts.job.zones[zone], facts.job.pour);
  const std::string words = saw_words(saw, facts.job);
  return cover ? fmt::format("{}, before the {} goes on", words, cover_words(*cover)) : words;
}

std::string instead_of_saw_words(const PlannedPour& facts, std::size_t zone) {
  const JointChoice& choice = cuts_of(facts).choices[zone];
  if (!choice.tooled.is_never()) {
    return fmt::format("tool the joints, {}", window_words(choice.tooled, facts.job));
  }
  return choice.in_time.empty() ? "no way to joint it in time: slow the mix, or pour another day"
                                : "get " + saws_in_time(facts, zone, false);
}

std::string text_cuts(const PlannedPour& facts, const TextStyle& style) {
  std::string text;
  for (const SawKind kind : kinds_of_saw) {
    if (is_cut_with(kind, cuts_of(facts))) text += shift_block(shift_of(kind, facts), facts, style);
  }
  return text;
}

std::string text_saw(const PlannedPour& facts, const TextStyle& style) {
  validate(facts);
  const Job& job = facts.job;
  std::string text = text_title(facts, style) + "\n";
  for (const std::size_t zone : zones_in_order(job)) text += zone_block(facts, zone, style);
  if (!cuts_of(facts).cuts.empty()) {
    for (const SawKind kind : kinds_of_saw) {
      const SawShift shift = shift_of(kind, facts);
      if (is_used(shift, job)) text += shift_block(shift, facts, style);
    }
  }
  return style.finished(text + text_cautions(saw_cautions(facts.plan.cautions), job, style, true));
}

}  // namespace slabtide
