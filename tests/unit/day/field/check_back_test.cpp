#include "slabtide/day/field/check_back.h"

#include <doctest/doctest.h>

namespace slabtide {
namespace {

PartPlan part(const char* id, const char* name, std::vector<std::size_t> cells) {
  PartPlan plan;
  plan.id = id;
  plan.name = name;
  plan.cells = std::move(cells);
  return plan;
}

/// Zones that are called what others' parts are.
DayPlan morning_plan() {
  ZonePlan walk;
  walk.name = "walk";
  walk.whole.cells = {0, 1, 2, 3};
  walk.parts = {part("along-2-of-2", "last 20 ft", {2, 3}),
                part("along-1-of-2", "first 22 ft", {0, 1})};
  ZonePlan last;
  last.name = "last 20 ft";
  last.whole.cells = {0, 1};
  ZonePlan border;
  border.name = "border";
  border.whole.cells = {0};
  border.border = part("border", "border", {1});
  DayPlan plan;
  plan.zones = {walk, last, border};
  return plan;
}

/// The same slab under another forecast: cut elsewhere, and its far end gets ready last.
DayPlan noon_plan() {
  DayPlan plan = morning_plan();
  plan.zones[0].parts = {part("along-1-of-2", "first 31 ft", {0, 1, 2}),
                         part("along-2-of-2", "last 11 ft", {3})};
  return plan;
}

Observation at(const char* zone, const char* name, const char* id = "") {
  return {ObservationKind::thumbprint, {}, {}, zone, name, {}, id};
}

std::vector<std::size_t> cells_of(const Observation& reading, const DayPlan& plan) {
  return cells_at(place_of(reading, plan), plan);
}

TEST_CASE("a reading stays where it was taken when the forecast renames and reorders the parts") {
  const Observation seen = at("walk", "last 20 ft", "along-2-of-2");
  CHECK(place_of(seen, morning_plan()) == PlaceId{0, "along-2-of-2"});
  CHECK(place_of(seen, noon_plan()) == PlaceId{0, "along-2-of-2"});
  CHECK(cells_of(seen, noon_plan()) == std::vector<std::size_t>{3});
}

TEST_CASE("a journal with names alone goes by those of the plan, or else by the whole zone") {
  CHECK(place_of(at("walk", "last 20 ft"), morning_plan()) == PlaceId{0, "along-2-of-2"});
  CHECK(place_of(at("walk", "last 20 ft"), noon_plan()) == PlaceId{0, ""});
  CHECK(cells_of(at("walk", "last 20 ft"), noon_plan()) == std::vector<std::size_t>{0, 1, 2, 3});
  CHECK(place_of(at("walk", "along-1-of-2"), noon_plan()) == PlaceId{0, "along-1-of-2"});
}

TEST_CASE("a part of a zone that is cut otherwise now is the whole zone") {
  CHECK(place_of(at("walk", "middle", "along-2-of-3"), noon_plan()) == PlaceId{0, ""});
}

TEST_CASE("a zone that is called what another's part is called is not taken for it") {
  const DayPlan plan = morning_plan();
  CHECK(place_of(at("last 20 ft", ""), plan) == PlaceId{1, ""});
  CHECK(place_of(at("last 20 ft", "last 20 ft"), plan) == PlaceId{1, ""});
  CHECK(place_of(at("border", ""), plan) == PlaceId{2, ""});
  CHECK(cells_of(at("border", ""), plan) == std::vector<std::size_t>{0});
  CHECK(cells_of(at("border", "border", "border"), plan) == std::vector<std::size_t>{1});
  CHECK_THROWS_AS(static_cast<void>(place_of(at("along-2-of-2", ""), plan)), std::invalid_argument);
}

}  // namespace
}  // namespace slabtide
