#include "text_parts.h"

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/made_words.h"
#include "report/words/verdict_sign.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

std::string text_assumptions(const PlannedPour& facts, const TextStyle& style) {
  std::string text = style.heading("Assumed") + "\n";
  for (const std::string& assumption : facts.plan.assumptions) {
    text += style.paragraph(assumption, 2, 4);
  }
  for (const std::string& note : facts.forecast.notes) text += style.paragraph(note, 2, 4);
  return text;
}

std::string saw_sentence(const SawPlan& saw, const std::string& zone_name, const Job& job) {
  const std::string about = zone_name.empty() ? std::string() : zone_name + ", ";
  const std::string hand = saw.on_hand ? "" : " (not on hand)";
  const std::string depth = thickness_words(saw.depth_m, job.units);
  if (saw.too_late) {
    return fmt::format("{}{}{}: too late: it opens {}, the earliest cut is due by {}", about,
                       saw_words(saw.kind), hand, day_clock(saw.opens, job),
                       day_clock(saw.latest, job));
  }
  if (!saw.opens) return about + saw_words(saw.kind) + hand + ": " + std::string(after_plan_words);
  const std::string until =
      saw.latest ? fmt::format(", earliest cut due by {}", day_clock(saw.latest, job))
                 : std::string();
  return fmt::format("{}{}{}: opens {}, ready all over {}{}, {} deep", about, saw_words(saw.kind),
                     hand, day_clock(saw.opens, job), day_clock(saw.open_all_over, job), until,
                     depth);
}

std::string verdict_line(const Judgement& judged, const TextStyle& style) {
  std::string text(verdict_words(judged.verdict));
  if (!judged.reasons.empty()) text += ": " + reasons_words(judged);
  const std::string wrapped = style.paragraph(text + ".");
  return judged.verdict == Verdict::good ? style.heading(wrapped) : style.warning(wrapped);
}

std::string text_title(const PlannedPour& facts, const TextStyle& style) {
  const std::string name = facts.job.name.empty() ? facts.job.site.name : facts.job.name;
  return style.both_ends(style.heading(name),
                         shown_date(facts.job.pour.date, clock_style(facts.job))) +
         style.paragraph(made_words(facts));
}

std::string text_opening(const PlannedPour& facts, const TextStyle& style) {
  std::string text = text_title(facts, style) + style.paragraph(weather_words(facts));
  text += style.paragraph(mix_words(facts) + "; " +
                          set_words(facts.run.mixes.front().setting, facts.job.units) + ".");
  return text;
}

}  // namespace slabtide
