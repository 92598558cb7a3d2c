#include "page_headline.h"

#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/words/decimals.h"
#include "report/words/verdict_sign.h"
#include "slabtide/core/units.h"
#include "slabtide/day/crew/sawing.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/report/text/text_saw.h"

namespace slabtide {

namespace {

/// A time, what it is for and where.
struct KeyTime {
  std::optional<UtcTime> at;
  std::string json;
  std::string what;
  std::string where;
  std::optional<TimeBand> band;
  std::string band_json = {};  ///< if it is not beside the time in the JSON
};

View key_time_view(const KeyTime& key, const Job& job) {
  View view = time_view(key.json, key.at, job);
  return view.put("what", key.what)
      .flag("other_day", clock_of(job).day(*key.at) != job.pour.date)
      .put("where", named_place(key.where, job).str())
      .put("band",
           band_views(key.band_json.empty() ? key.json + "_band" : key.band_json, key.band, job));
}

/// The first main window to open or, with `last`, the last to close.
KeyTime edge_of_work(const PlannedPour& facts, bool last) {
  KeyTime found;
  for (const ShownPart& part : all_parts(facts)) {
    const Operation main = main_operation(part.finish);
    const ShownWindow shown = window_of(part, main);
    if (shown.window == nullptr || !can_be_done(*shown.window)) continue;
    const UtcTime at = last ? *shown.window->closes : *shown.window->opens;
    if (found.at && (last ? at <= *found.at : at >= *found.at)) continue;
    found = {at,
             shown.at(last ? "closes" : "opens"),
             last ? fmt::format("Last {} done by", operation_words(main))
                  : fmt::format("Ready to {}", operation_verb(main)),
             place_words(part, facts.job),
             last ? shown.window->closes_band : shown.window->opens_band,
             shown.at(last ? "closes_band" : "opens_band")};
  }
  return found;
}

/// The band of a zone's first cut due, and where it stands in the JSON.
void put_due_band(KeyTime& key, const PlannedPour& facts, std::size_t zone, SawKind kind) {
  const std::vector<SawPlan>& saws = facts.plan.zones[zone].saws;
  for (std::size_t i = 0; i < saws.size(); ++i) {
    if (saws[i].kind != kind) continue;
    key.band = saws[i].latest_band;
    key.band_json = pointer(pointer("/zones", zone, "saw_windows"), i, "latest_band");
  }
}

/// The zone, due first, that no saw on hand cuts in time.
KeyTime first_crack(const PlannedPour& facts) {
  const auto zone = first_without_saw(facts.plan.cuts);
  if (!zone) return {};
  const auto sawing = sawing_of(facts.plan.cuts, facts.plan.crew, facts.job, *zone);
  KeyTime key{
      sawing->due,
      pointer("/zones", *zone, "joints") + "/sawing/due",
      "Cracks likely from",
      fmt::format("{}, {}", facts.job.zones[*zone].name, instead_of_saw_words(facts, *zone)),
      {}};
  put_due_band(key, facts, *zone, sawing->kind);
  return key;
}

/// When the first of the cuts that are sawn must be done; when the sawing begins if none is due.
KeyTime first_cut_time(const PlannedPour& facts) {
  const auto first = first_cut(facts.plan.cuts, facts.plan.crew);
  if (!first) return {};
  const auto due_zone = first_due_zone(facts.plan.cuts);
  const std::size_t zone = due_zone.value_or(facts.plan.cuts.cuts[first->cut.cut].zone);
  const auto sawing = sawing_of(facts.plan.cuts, facts.plan.crew, facts.job, zone);
  const std::string json = pointer("/zones", zone, "joints") + "/sawing/";
  const std::string what = fmt::format("{}, {}", facts.job.zones[zone].name,
                                       saw_to_use_words(facts, zone, sawing->kind));
  if (!due_zone) return {sawing->starts, json + "starts", "First cut at", what, {}};
  const bool late = sawing->late_min > 0;
  KeyTime key{sawing->due,
              json + "due",
              late ? "Earliest cut was due by" : "Earliest cut due by",
              fmt::format("{} at {}{}", what, day_clock(sawing->starts, facts.job),
                          late ? ", too late" : ""),
              {}};
  put_due_band(key, facts, zone, sawing->kind);
  return key;
}

/// If nothing has to be cut: when the first zone can be walked on.
KeyTime first_walk(const PlannedPour& facts) {
  KeyTime found;
  for (const ShownPart& part : all_parts(facts)) {
    const ShownWindow shown = window_of(part, Operation::walk);
    if (shown.window == nullptr || !shown.window->open_all_over) continue;
    if (found.at && *found.at <= *shown.window->open_all_over) continue;
    found = {shown.window->open_all_over,
             shown.at("open_all_over"),
             "Walk on it from",
             place_words(part, facts.job),
             std::nullopt,
             {}};
  }
  return found;
}

View tightest_view(const Tightest& tightest, const Job& job) {
  View view;
  const std::string place =
      tightest.part.empty() ? tightest.zone : fmt::format("{}, {}", tightest.zone, tightest.part);
  const bool never = !(tightest.minutes > 0.0);
  if (!never) {
    view.put("minutes", figure_view("/tightest/minutes", std::round(tightest.minutes),
                                    fixed_words(tightest.minutes) + " min"));
  }
  return view.flag("never", never)
      .put("operation", operation_verb(tightest.operation))
      .put("opens", time_view("/tightest/opens", tightest.opens, job))
      .put("where", named_place(place, job).str());
}

std::string verdict_class(Verdict verdict) {
  constexpr std::array<std::string_view, 3> classes{"good", "care", "think-again"};
  return std::string(classes[static_cast<std::size_t>(verdict)]);
}

View sureness_view(const Sureness& sureness) {
  std::vector<View> causes;
  for (const DoubtCause& cause : told_causes(sureness)) {
    const std::string json = pointer("/sureness/causes", causes.size(), "share");
    View view = figure_view(json, cause.fraction, percent_words(cause.fraction));
    causes.push_back(view.put("what", uncertain_input_words(cause.uncertain_input))
                         .flag("more", !causes.empty()));
  }
  View view;
  view.put("sure", sure_words(sure_word(sureness))).put("past_end", past_end_words);
  if (const auto& minutes = sureness.either_way_min) {
    view.put("either_way", figure_view("/sureness/either_way_min", std::round(*minutes),
                                       fixed_words(*minutes) + " min"));
  }
  if (!causes.empty()) view.put("doubt", View().put("causes", std::move(causes)));
  return view;
}

}  // namespace

View verdict_view(const Judgement& judged) {
  View view;
  view.put("verdict_words", verdict_words(judged.verdict))
      .put("verdict_class", verdict_class(judged.verdict))
      .put("verdict_sign", verdict_sign(judged.verdict));
  if (!judged.reasons.empty()) view.put("reasons", View().put("words", reasons_words(judged)));
  return view;
}

View headline_view(const PlannedPour& facts) {
  const KeyTime crack = first_crack(facts);
  const KeyTime saw = crack.at ? crack : first_cut_time(facts);
  std::vector<View> times;
  for (const KeyTime& key :
       {edge_of_work(facts, false), edge_of_work(facts, true), saw.at ? saw : first_walk(facts)}) {
    if (key.at) times.push_back(key_time_view(key, facts.job));
  }
  View view;
  view.put("verdict", verdict_view(judge(facts.plan.cautions))).put("key_times", std::move(times));
  if (facts.plan.sureness) view.put("sureness", sureness_view(*facts.plan.sureness));
  if (facts.plan.tightest) view.put("tightest", tightest_view(*facts.plan.tightest, facts.job));
  return view;
}

}  // namespace slabtide
