#include "json_crew.h"

#include <algorithm>
#include <array>

#include <nlohmann/json.hpp>

#include "report/words/decimals.h"
#include "report/words/supply_amount.h"
#include "slabtide/report/text/text_crew.h"

namespace slabtide {

namespace {

Json task_facts(const Task& task) {
  Json json{{"task", task_kind_id(task.kind)}, {"zone", task.zone}, {"part", task.part}};
  json["part_id"] = task.place ? task.place->part : std::string();
  if (task.pieces > 1) {
    json["piece"] = task.piece;
    json["pieces"] = task.pieces;
  }
  return json;
}

Json timed_task(const CrewPlan& crew, std::size_t task, const Job& job) {
  Json json = task_facts(crew.tasks[task]);
  json["start"] = json_time(crew.starts[task], job);
  json["end"] = json_time(crew.ends[task], job);
  json["hands"] = crew.schedule.assignments[task].hands;
  json["late_min"] = crew.schedule.assignments[task].late_min;
  const bool known = task < crew.late_chances.size() && crew.late_chances[task];
  json["late_chance"] = known ? Json(hundredths(*crew.late_chances[task])) : Json(nullptr);
  return json;
}

Json member_json(const CrewPlan& crew, const CrewMember& member, const Job& job) {
  Json json{{"name", member.name},
            {"arrives", json_time(member.visits.front().arrives, job)},
            {"leaves", json_time(member.visits.front().leaves, job)},
            {"tasks", Json::array()},
            {"idle", Json::array()},
            {"returns", Json::array()}};
  for (const CrewVisit& visit : member.visits) {
    for (const std::size_t task : visit.tasks) json["tasks"].push_back(timed_task(crew, task, job));
    for (const IdleTime& idle : visit.idle) {
      json["idle"].push_back(
          {{"from", json_time(idle.from, job)}, {"to", json_time(idle.to, job)}});
    }
    if (&visit == &member.visits.front()) continue;
    json["returns"].push_back(
        {{"arrives", json_time(visit.arrives, job)}, {"leaves", json_time(visit.leaves, job)}});
  }
  return json;
}

std::string_view remedy_id(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::more_hands:
      return "more_hands";
    case RemedyKind::slow_the_set:
      return "slow_the_set";
    case RemedyKind::place_later:
      return "place_later";
    case RemedyKind::pour_less:
      return "pour_less";
  }
  return "more_hands";
}

std::string_view amount_key(SupplyKind kind) {
  constexpr std::array<std::string_view, 4> keys{"amount_m3", "amount_kg", "amount_l", "amount_m2"};
  return keys[static_cast<std::size_t>(supply_unit(kind))];
}

}  // namespace

Json json_crew(const CrewPlan& crew, const Job& job) {
  Json json = Json::array();
  for (const CrewMember& member : crew.people) {
    if (!member.visits.empty()) json.push_back(member_json(crew, member, job));
  }
  return json;
}

Json json_crew_summary(const CrewPlan& crew, const Job& job) {
  if (crew.people.empty()) return nullptr;
  Json json{{"finishers", crew.schedule.crew},
            {"late_min", crew.schedule.late_min},
            {"says", crew_size_words(crew)},
            {"lost", lost_finish_names(crew)},
            {"smallest_crew", json_maybe(crew.smallest_crew)},
            {"enough_crew", crew.enough_crew},
            {"least_late_min", crew.min_late_min},
            {"crew_hours", hundredths(crew.crew_hours())},
            {"tightest", nullptr},
            {"late", Json::array()},
            {"cures", Json::array()},
            {"saves", Json::array()}};
  if (crew.tightest) {
    json["tightest"] = timed_task(crew, crew.tightest->task, job);
    json["tightest"]["slack_min"] = std::max(0, crew.tightest->slack_min);
  }
  for (const std::size_t task : crew.late) json["late"].push_back(timed_task(crew, task, job));
  for (const CrewRemedy& remedy : crew.remedies) {
    json["cures"].push_back({{"cure", remedy_id(remedy.kind)},
                             {"zone", remedy.zone},
                             {"amount", remedy.amount},
                             {"left", remedy.left},
                             {"late_min", remedy.late_min}});
  }
  for (const ZoneRescue& rescue : crew.rescues) {
    Json ways = Json::array();
    for (const CrewRemedy& way : rescue.ways) {
      ways.push_back({{"cure", remedy_id(way.kind)},
                      {"amount", way.amount},
                      {"lost", way.lost},
                      {"late_min", way.late_min}});
    }
    json["saves"].push_back({{"zone", rescue.zone}, {"ways", std::move(ways)}});
  }
  return json;
}

Json json_touch(const std::vector<PartTouch>& touches, const Job& job) {
  Json json = Json::array();
  for (const PartTouch& touch : touches) {
    for (const TouchAt& quarter : touch.quarters) {
      json.push_back({{"at", json_time(quarter.at, job)},
                      {"part", touch.part},
                      {"part_id", touch.part_id},
                      {"operation", operation_id(touch.operation)},
                      {"touch", touch_id(quarter.touch)},
                      {"resistance_psi", tenths(quarter.resistance_psi)}});
    }
  }
  return json;
}

Json json_supplies(const std::vector<Supply>& supplies, UnitSystem units) {
  Json json = Json::array();
  for (const Supply& supply : supplies) {
    json.push_back({{"item", supply_id(supply.kind)},
                    {"name", supply_words(supply.kind)},
                    {std::string(amount_key(supply.kind)), hundredths(supply.amount)},
                    {"says", supply_amount_words(supply, units)},
                    {"area_m2", hundredths(supply.area_m2)},
                    {"zones", supply.zones}});
  }
  return json;
}

}  // namespace slabtide
