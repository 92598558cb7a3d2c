#include "page_parts.h"

#include <fmt/format.h>

#include "job/geometry/placing_sequence.h"
#include "page_views.h"
#include "report/words/short_names.h"

namespace slabtide {

ShownPart whole_of(const PlannedPour& facts, std::size_t zone) {
  return {zone, &facts.plan.zones[zone].whole, facts.job.zones[zone].finish,
          pointer("/zones", zone), "all of it"};
}

std::vector<ShownPart> parts_of(const PlannedPour& facts, std::size_t zone) {
  const ZonePlan& plan = facts.plan.zones[zone];
  const Zone& described = facts.job.zones[zone];
  const std::string json = pointer("/zones", zone);
  std::vector<ShownPart> parts;
  if (plan.parts.empty()) parts.push_back(whole_of(facts, zone));
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    const PartPlan& part = plan.parts[i];
    parts.push_back({zone, &part, described.finish, pointer(json + "/parts", i), part.name});
  }
  if (plan.border) {
    parts.push_back({zone, &*plan.border, described.border->finish, json + "/border", "border"});
  }
  return parts;
}

std::vector<ShownPart> all_parts(const PlannedPour& facts) {
  std::vector<ShownPart> all;
  for (const std::size_t zone : zones_in_order(facts.job)) {
    for (ShownPart& part : parts_of(facts, zone)) all.push_back(std::move(part));
  }
  return all;
}

std::string place_words(const ShownPart& part, const Job& job) {
  const std::string& zone = job.zones[part.zone].name;
  return part.plan->name.empty() ? zone : fmt::format("{}, {}", zone, part.title);
}

Element with_names(Element element, std::string_view text, const Job& job) {
  const std::string words = short_names(text, job);
  if (words == text) return element.text(text);
  return element.set("data-short", words).add(Element("span").text(text));
}

Element named_place(const std::string& place, const Job& job) {
  return with_names(Element("bdi"), place, job);
}

ShownWindow window_of(const ShownPart& part, Operation operation) {
  const std::vector<OperationWindow>& windows = part.plan->windows;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    if (windows[i].operation == operation) {
      return {&windows[i], pointer(part.json + "/windows", i)};
    }
  }
  return {};
}

ShownWindow late_window_of(const PlannedPour& facts, std::size_t zone, Operation operation) {
  const ShownPart whole = whole_of(facts, zone);
  ShownWindow of_field = window_of(whole, operation);
  const ZonePlan& plan = facts.plan.zones[zone];
  if (of_field.window != nullptr || !plan.border) return of_field;
  return window_of({zone, &*plan.border, whole.finish, whole.json + "/border", {}}, operation);
}

bool can_be_done(const OperationWindow& window) {
  return window.opens && window.closes && !window.is_never();
}

}  // namespace slabtide
