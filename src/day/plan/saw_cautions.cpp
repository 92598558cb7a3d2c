#include "saw_cautions.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/model/covers.h"
#include "slabtide/day/crew/sawing.h"

namespace slabtide {

namespace {

/// The number of faults that are named; the others are only counted.
constexpr std::size_t max_named = 3;

std::string_view saw_name(SawKind kind) {
  return kind == SawKind::early_entry ? "early-entry saw" : "wet saw";
}

std::string_view article(SawKind kind) { return kind == SawKind::early_entry ? "an" : "a"; }

std::string faults_in_words(const std::vector<JointFault>& faults, const Job& job) {
  std::string words;
  std::size_t named = 0;
  std::size_t more = 0;
  for (const JointFault& fault : faults) {
    if (is_preference(fault)) continue;
    if (named == max_named) {
      ++more;
      continue;
    }
    words += fmt::format("{}{}", named == 0 ? "" : "; ", fault_words(fault, job));
    ++named;
  }
  if (more > 0) words += fmt::format("; {} more", more);
  return words;
}

/// A kind of saw on hand that would be fast enough if there were more of them.
const SawShift* enough_with_more(const CutPlan& cuts) {
  for (const SawShift& shift : cuts.shifts) {
    if (shift.on_hand && shift.saws_needed && *shift.saws_needed > 1) return &shift;
  }
  return nullptr;
}

/// Jointing without a saw, and when.
std::string tool_words(const JointChoice& choice, const Watch& watch) {
  if (choice.tooled.is_never()) {
    return "there is no good time to tool the joints either: slow the mix, or pour another day";
  }
  std::string words = "tool the joints while the concrete is plastic";
  if (choice.tooled.opens && choice.tooled.closes) {
    words += fmt::format(" ({} to {})", watch.pour_clock(*choice.tooled.opens),
                         watch.pour_clock(*choice.tooled.closes));
  }
  return words;
}

std::string remedy_for(const JointChoice& choice, const Watch& watch) {
  std::string tool = tool_words(choice, watch);
  if (choice.in_time.empty()) return tool;
  const SawKind kind = choice.in_time.front();
  return fmt::format("get {} {}, or {}", article(kind), saw_name(kind), tool);
}

std::optional<ZoneSawing> sawing_in(const Watch& watch, std::size_t zone) {
  return sawing_of(watch.cuts, watch.crew, watch.job, zone);
}

void watch_zone(Watch& watch, std::size_t zone) {
  const JointChoice& choice = watch.cuts.choices[zone];
  const auto due = first_due(watch.cuts, zone);
  if (const SawShift* shift = enough_with_more(watch.cuts)) {
    watch.add("saw_not_enough", "one saw is not enough", CautionLevel::caution,
              watch.zones[zone].name, due,
              fmt::format("one {} does not make it in time: {} working side by side do. Or {}",
                          saw_name(shift->kind), *shift->saws_needed, remedy_for(choice, watch)),
              "worked out from this plan; saw speed from memory");
    return;
  }
  watch.add("saw_too_late", "saw too late", CautionLevel::stop, watch.zones[zone].name, due,
            fmt::format("the saw on hand cannot cut before the slab is likely to crack ({}): {}",
                        due ? watch.pour_clock(*due) : std::string(after_plan_words),
                        remedy_for(choice, watch)),
            "worked out from this plan; ACI 302.1R");
}

/// A saw that would be in time, but which nobody is free to lead.
void watch_hands_at_saw(Watch& watch, std::size_t zone) {
  const auto sawing = sawing_in(watch, zone);
  if (!sawing || !sawing->can_be_in_time || sawing->late_min == 0 || !sawing->starts) return;
  const bool is_lost = sawing->late_min > finish_lost_min;
  watch.add("saw_waits", "nobody free to saw", is_lost ? CautionLevel::stop : CautionLevel::caution,
            watch.zones[zone].name, sawing->due,
            fmt::format("the crew comes to the saw at {}, and cuts are through up to {} after they "
                        "are due (the first by {}): bring a hand for the saw alone, or {}",
                        watch.pour_clock(*sawing->starts), duration_words(sawing->late_min),
                        sawing->due ? watch.pour_clock(*sawing->due) : "then",
                        tool_words(watch.cuts.choices[zone], watch)),
            "worked out from this plan; ACI 302.1R");
}

/// A cover that cures lies from final set on in the plan, and keeps the slab from cooling.
void watch_curing_cover(Watch& watch) {
  std::optional<CuringKind> cover;
  std::optional<UtcTime> starts;
  for (std::size_t zone = 0; zone < watch.zones.size(); ++zone) {
    const auto sawing = sawing_in(watch, zone);
    const auto laid = curing_cover(watch.job.zones[zone], watch.job.pour);
    if (!sawing || !laid) continue;
    cover = laid;
    if (sawing->starts) starts = std::min(*sawing->starts, starts.value_or(*sawing->starts));
  }
  if (!cover) return;
  watch.add(
      "saw_before_cover", "saw before it is covered", CautionLevel::caution, {}, starts,
      fmt::format("saw as soon as the concrete takes it, then lay the {0}. The hours by which "
                  "cuts are due count the {0} as on from final set: a slab left bare, "
                  "or with its {0} lifted to saw, cools at once and cracks sooner",
                  cover_words(*cover)),
      "common practice, no source; the hours worked out from this plan");
}

}  // namespace

void watch_joints(Watch& watch) {
  for (std::size_t zone = 0; zone < watch.zones.size(); ++zone) {
    const ZoneJoints& joints = watch.cuts.joints[zone];
    if (!joints.breaks_a_rule()) continue;
    const std::string faults = faults_in_words(joints.faults, watch.job);
    watch.add("joint_rule", "joints break a rule", CautionLevel::caution, watch.zones[zone].name,
              watch.zones[zone].placed.start,
              joints.drawn
                  ? fmt::format("the joints drawn break a rule: {}. Move them or add some", faults)
                  : fmt::format("no joints proposed here keep every rule: {}. Draw your own, or "
                                "change the outline",
                                faults),
              "ACI 302.1R, 360R; municipal walk standards, published");
  }
}

void watch_saws(Watch& watch) {
  watch_curing_cover(watch);
  for (std::size_t zone = 0; zone < watch.zones.size(); ++zone) watch_hands_at_saw(watch, zone);
  if (watch.job.pour.saws.empty()) return;
  for (std::size_t zone = 0; zone < watch.zones.size(); ++zone) {
    if (watch.cuts.choices[zone].way == JointWay::tool) watch_zone(watch, zone);
  }
}

void add_saw_notes(Watch& watch) {
  if (watch.cuts.cuts.empty()) return;
  watch.add("wet_sawing", "saw slurry", CautionLevel::note, {}, std::nullopt,
            "a wet saw's slurry stains color and burns like fresh concrete: wash or vacuum it off "
            "before it dries, keep it out of drains, plug electric saws into a GFCI",
            "common practice");
  watch.add("cracked_joint", "joint already cracked", CautionLevel::note, {}, std::nullopt,
            "where a joint has already cracked, do not saw beside the crack: leave it, rout and "
            "seal it later",
            "US Army TM 5-822-7, published");
}

}  // namespace slabtide
