#include "plan_answers.h"

#include <optional>
#include <span>
#include <sstream>
#include <string>
#include <utility>

#include <nlohmann/json.hpp>

#include "report/text/text_plant_order.h"
#include "report/words/told_cautions.h"
#include "request/plan/compared_pour.h"
#include "slabtide/day/plan/outlook.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/report/text/text_crew.h"
#include "slabtide/report/text/text_plan.h"
#include "slabtide/report/text/text_saw.h"
#include "slabtide/request/plan/plan_request.h"
#include "slabtide/request/write/report_formats.h"

namespace slabtide {
namespace {

using Json = nlohmann::ordered_json;

constexpr int one_thread = 1;

/// The job planned without bands, or why there is no plan.
struct Planned {
  std::optional<PlannedPour> pour;
  Json result;
};

Planned planned_of(const Asked& asked) {
  std::ostringstream messages;
  auto pour = plan_request(asked.request(), asked.sources(), messages, one_thread);
  const Parsed<Job> job = read_job(asked.job_text(), asked.time_zones);
  Json result{{"ok", pour.has_value()},
              {"findings", findings_of(job.diagnostics)},
              {"messages", messages.str()}};
  return {std::move(pour), std::move(result)};
}

template <class Facts>
Json files_of(const Facts& facts, std::span<const FileFormat<Facts>> formats, UtcTime now,
              const Asked& asked) {
  Json files = Json::object();
  for (const Json& ending : asked.json.at("formats")) {
    const auto name = ending.get<std::string>();
    if (auto text = made_as(name, formats, facts, {now, {}})) files[name] = *text;
  }
  return files;
}

/// Its sign is 0 to pour, 1 to pour with care, 2 to think again.
Json verdict_of(const PlannedPour& pour) {
  const Judgement judged = judge(pour.plan.cautions);
  return {{"level", static_cast<int>(judged.verdict)},
          {"words", verdict_words(judged.verdict)},
          {"reasons", judged.reasons}};
}

/// What to watch for as the reports tell it: the worst first, what several places share as one, and
/// which of it is told at once.
Json watch_of(const PlannedPour& pour) {
  Json list = Json::array();
  for (const ToldCaution& told : told_cautions(pour.plan.cautions, pour.job)) {
    list.push_back({{"level", caution_level_id(told.first->level)},
                    {"zone", told.zone},
                    {"text", told.text},
                    {"at_once", told.at_once}});
  }
  return list;
}

}  // namespace

Json answer_plan(const Asked& asked) {
  auto [pour, result] = planned_of(asked);
  if (!pour) return result;
  const std::size_t draws = asked.draws(samples_for(pour->plan, usual_samples));
  *pour = with_uncertainty(std::move(*pour), {draws, one_thread, {}});
  result["files"] = files_of(*pour, plan_formats(), pour->now, asked);
  result["verdict"] = verdict_of(*pour);
  result["watch"] = watch_of(*pour);
  if (!asked.json.value("words", false)) return result;
  const TextStyle plain;
  result["text"] = text_plan(*pour, plain);
  result["crew"] = text_crew(*pour, plain);
  result["saw"] = text_saw(*pour, plain);
  result["order"] = text_plant_order(*pour);
  return result;
}

Json answer_compare(const Asked& asked) {
  auto [pour, result] = planned_of(asked);
  if (!pour) return result;
  const std::size_t draws = asked.draws(samples_for(pour->plan, usual_samples));
  const ComparedPour compared = compare_pour(*pour, draws, one_thread, {});
  const CompareFacts facts{*pour, compared.comparison, compared.turning, compared.advice};
  result["files"] = files_of(facts, compare_formats(), pour->now, asked);
  return result;
}

Json answer_outlook(const Asked& asked) {
  auto [pour, result] = planned_of(asked);
  if (!pour) return result;
  const Outlook outlook = look_ahead(*pour);
  result["files"] = files_of(OutlookFacts{*pour, outlook}, outlook_formats(), pour->now, asked);
  return result;
}

}  // namespace slabtide
