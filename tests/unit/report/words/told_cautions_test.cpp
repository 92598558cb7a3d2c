#include "report/words/told_cautions.h"

#include <doctest/doctest.h>

#include "support/sample_job.h"

namespace slabtide {
namespace {

Caution short_window(const std::string& zone, int minutes, int hour, const std::string& at) {
  Caution caution;
  caution.code = "short_window";
  caution.zone = zone;
  caution.at = UtcTime(Date(2026, 5, 14), Duration(hour, 0, 0));
  caution.text = "only " + std::to_string(minutes) + " min for the broom from " + at +
                 ": have everybody there";
  return caution;
}

}  // namespace

TEST_CASE("cautions that ask the same are told once, mornings and afternoons alike") {
  const Job job = test::sample_job({});
  const std::vector<Caution> all{short_window("pad", 44, 11, "11:00 AM"),
                                 short_window("walk", 9, 14, "2:00 PM")};
  const auto told = told_cautions(all, job);
  REQUIRE(told.size() == 1);
  CHECK(told[0].indexes == std::vector<std::size_t>{0, 1});
  CHECK(told[0].merged());
  CHECK(told[0].zone == "pad");
  CHECK(told[0].text ==
        "only 44 min for the broom from 11:00 AM; also walk 2:00 PM: have everybody there");
}

TEST_CASE("of many places the first few are named, the rest counted") {
  const Job job = test::sample_job({});
  std::vector<Caution> all;
  for (const char* zone : {"a", "b", "c", "d", "e"}) {
    all.push_back(short_window(zone, 44, 11, "11:00 AM"));
  }
  CHECK(told_cautions(all, job, 2)[0].text ==
        "only 44 min for the broom from 11:00 AM; also b 11:00 AM, c 11:00 AM and 2 more: "
        "have everybody there");
  CHECK(told_cautions(all, job, 3)[0].text ==
        "only 44 min for the broom from 11:00 AM; also b 11:00 AM, c 11:00 AM, d "
        "11:00 AM, e 11:00 AM: have everybody there");
}

TEST_CASE("what differs by more than place and time is told by itself") {
  const Job job = test::sample_job({});
  std::vector<Caution> all{short_window("pad", 44, 11, "11:00 AM"),
                           short_window("walk", 9, 14, "2:00 PM")};
  SUBCASE("another remedy") { all[1].text += ", or slow it"; }
  SUBCASE("another code") { all[1].code = "late"; }
  SUBCASE("another level") { all[1].level = CautionLevel::stop; }
  SUBCASE("the whole job") { all[1].zone.clear(); }
  CHECK(told_cautions(all, job).size() == 2);
}

TEST_CASE("the worst is told first, and what stops the work before what wants care") {
  const Job job = test::sample_job({});
  std::vector<Caution> all{short_window("a", 1, 8, "8:00 AM"), short_window("b", 1, 9, "9:00 AM"),
                           short_window("c", 1, 10, "10:00 AM")};
  for (std::size_t i = 0; i < all.size(); ++i) all[i].code += std::to_string(i);
  all[0].loss = Loss::comfort;
  all[1].loss = Loss::slab;
  all[2].level = CautionLevel::stop;
  const auto told = told_cautions(all, job);
  REQUIRE(told.size() == 3);
  CHECK(told[0].zone == "c");
  CHECK(told[1].zone == "b");
  CHECK(told[2].zone == "a");
}

TEST_CASE("the same for another work, or of another load, is told once") {
  const Job job = test::sample_job({});
  std::vector<Caution> all{short_window("pad", 44, 11, "11:00 AM"),
                           short_window("pad", 9, 14, "2:00 PM")};
  all[0].what = "broom";
  all[1].what = "float";
  all[1].text = "only 9 min for the float from 2:00 PM: have everybody there";
  const auto works = told_cautions(all, job);
  REQUIRE(works.size() == 1);
  CHECK(works[0].text ==
        "only 44 min for the broom from 11:00 AM; also pad (float) 2:00 PM: have everybody there");
  for (int i = 0; i < 2; ++i) {
    Caution& one = all[static_cast<std::size_t>(i)];
    one.zone.clear();
    one.what = "load " + std::to_string(i + 1);
    one.text = one.what + " is only 2.50 yd³: under 4.0 yd³ most plants charge a short load";
  }
  const auto loads = told_cautions(all, job);
  REQUIRE(loads.size() == 1);
  CHECK(loads[0].text ==
        "load 1 is only 2.50 yd³; also load 2 2:00 PM: under 4.0 yd³ most plants charge a short "
        "load");
}

TEST_CASE("hours and minutes late make no other kind than minutes late") {
  const Job job = test::sample_job({});
  std::vector<Caution> all{short_window("pad", 44, 11, "11:00 AM"),
                           short_window("walk", 9, 14, "2:00 PM")};
  all[0].text = "cuts are 40 min late: bring a hand";
  all[1].text = "cuts are 2 h 5 min late: bring a hand";
  CHECK(told_cautions(all, job).size() == 1);
}

TEST_CASE("seven are told at once, the rest and notes are folded away") {
  const Job job = test::sample_job({});
  std::vector<Caution> all;
  for (int i = 0; i < 10; ++i) {
    all.push_back(short_window("pad", 44, 11, "11:00 AM"));
    all.back().code += std::to_string(i);
    if (i == 0) all.back().level = CautionLevel::note;
  }
  const auto told = told_cautions(all, job);
  REQUIRE(told.size() == 10);
  for (std::size_t i = 0; i < told.size(); ++i) CHECK(told[i].at_once == (i < 7));
  all.resize(2);
  const auto few = told_cautions(all, job);
  CHECK(few[0].at_once);
  CHECK_FALSE(few[1].at_once);
  CHECK(few[1].first->level == CautionLevel::note);
}

TEST_CASE("the short windows of a zone are one line, the tightest work first") {
  const auto zone = [](const char* name) {
    return test::zone_named(name, test::rectangle(0, 0, 5, 4), Finish::broom);
  };
  const Job job = test::sample_job(
      {zone("porch"), zone("porch, back"), zone("walk"), zone("d"), zone("e"), zone("f")});
  std::vector<Caution> all;
  const auto add = [&all](const std::string& place, const std::string& work, int minutes,
                          int hour) {
    Caution& one = all.emplace_back(short_window(place, minutes, hour, "?"));
    one.what = work;
    one.window_min = minutes + 0.3;
    one.text =
        "only " + std::to_string(minutes) + " min for the " + work + ": have everybody there";
  };
  add("porch", "first edge", 38, 13);
  add("walk", "broom", 20, 13);
  add("porch", "broom", 30, 14);
  add("porch, edge", "broom", 31, 14);  // a part of the porch
  add("porch, back", "broom", 41, 15);  // another zone
  const auto told = told_cautions(all, job);
  REQUIRE(told.size() == 3);
  CHECK(told[0].zone == "walk");
  CHECK(told[0].text == "only 20 min for the broom: have everybody there");
  CHECK(told[1].zone == "porch");
  CHECK(told[1].text ==
        "only 30 min for the broom, 31 min for the broom, edge, from 2:00 PM, 38 min for the first "
        "edge from 1:00 PM: have everybody there");
  CHECK(told[1].indexes == std::vector<std::size_t>{2, 3, 0});
  CHECK(told[2].zone == "porch, back");
  // Of many zones the last share a line.
  for (const char* name : {"d", "e", "f"}) add(name, "broom", 42, 15);
  const auto many = told_cautions(all, job);
  REQUIRE(many.size() == 4);
  CHECK(many[3].zone == "d");
  CHECK(many[3].text ==
        "only 42 min for the broom, e 42 min (broom) from 3:00 PM, f 42 min (broom) from 3:00 PM: "
        "have everybody there");
  std::size_t merged = 0;
  for (const ToldCaution& one : many) merged += one.indexes.size();
  CHECK(merged == all.size());
}

}  // namespace slabtide
