#include <algorithm>
#include <stdexcept>

#include <doctest/doctest.h>

#include "slabtide/day/crew/tasks.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

UtcTime minute(const Job& job, double minutes) {
  return after_seconds(job.pour.start, minutes * 60.0);
}

OperationWindow window(Operation operation, const Job& job, double opens, double all_over,
                       double closes, double closed_all_over) {
  OperationWindow made;
  made.operation = operation;
  made.opens = minute(job, opens);
  made.open_all_over = minute(job, all_over);
  made.closes = minute(job, closes);
  made.closed_all_over = minute(job, closed_all_over);
  return made;
}

/// The operations of a finish, ten minutes apart from 150 min on, each open for an hour.
PartPlan part_plan(const std::string& name, double area_m2, Finish finish, const Job& job) {
  PartPlan part;
  part.name = name;
  part.area_m2 = area_m2;
  double opens = 150.0;
  for (const Operation operation : operations_of(finish)) {
    part.windows.push_back(window(operation, job, opens, opens + 8, opens + 60, opens + 72));
    opens += 10.0;
  }
  return part;
}

ZonePlan zone_plan(const Zone& zone, double area_m2, const Job& job) {
  ZonePlan plan;
  plan.name = zone.name;
  plan.area_m2 = area_m2;
  plan.placed = {job.pour.start, minute(job, 20)};
  plan.whole = part_plan({}, area_m2, zone.finish, job);
  return plan;
}

std::vector<Task> day_tasks(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                            const Practice& practice) {
  return day_work(job, zones, cuts, practice).tasks;
}

const Task* find(const std::vector<Task>& tasks, TaskKind kind, const std::string& part = {}) {
  const auto found = std::find_if(tasks.begin(), tasks.end(), [&](const Task& task) {
    return task.kind == kind && task.part == part;
  });
  return found == tasks.end() ? nullptr : &*found;
}

/// A pad of 5 x 2 m, 10 m2, whose perimeter is 14 m.
Zone pad(Finish finish) { return test::zone_named("pad", test::rectangle(0, 0, 5, 2), finish); }

/// A plan with nothing to cut.
CutPlan no_joints(const Job& job) {
  CutPlan cuts;
  cuts.joints.resize(job.zones.size());
  cuts.choices.resize(job.zones.size());
  return cuts;
}

/// One joint across the pad, 2 m long, made in this way; if sawn from 400 to 404 min, due by 600
/// min.
CutPlan one_joint(JointWay way, const Job& job) {
  CutPlan cuts = no_joints(job);
  cuts.choices[0].way = way;
  cuts.joints[0].joints = {Joint{{2.5, 0}, {2.5, 2}}};
  PlannedCut cut;
  cut.latest = minute(job, 600);
  cuts.cuts = {cut};
  SawnCut sawn;
  sawn.starts = minute(job, 400);
  sawn.ends = minute(job, 404);
  cuts.shifts[0].cuts = {sawn};
  return cuts;
}

bool comes_after(const std::vector<Task>& tasks, const Task& task, const Task& before) {
  const auto index = static_cast<std::size_t>(&before - tasks.data());
  return std::find(task.after.begin(), task.after.end(), index) != task.after.end();
}

}  // namespace

TEST_CASE("a broom pad's work, from its area, its edge and the rates") {
  Job job = test::sample_job({pad(Finish::broom)});
  job.pour.saws = {SawKind::wet};
  Practice practice = default_practice();
  const std::vector<Task> tasks =
      day_tasks(job, {zone_plan(job.zones[0], 10.0, job)}, no_joints(job), practice);
  // By hand: 10 m2 at 15.5 and 46.5 m2/h, 14 m at 61 m/h.
  CHECK(find(tasks, TaskKind::screed)->work_person_min == doctest::Approx(600.0 / 15.5));
  CHECK(find(tasks, TaskKind::broom)->work_person_min == doctest::Approx(600.0 / 46.5));
  CHECK(find(tasks, TaskKind::first_edge)->work_person_min == doctest::Approx(840.0 / 61.0));
  CHECK(find(tasks, TaskKind::detail_edge)->work_person_min == doctest::Approx(840.0 / 61.0));
  CHECK(find(tasks, TaskKind::clean_up)->work_person_min == doctest::Approx(60.0));
  // The bull float is all the floating of a broomed slab (common practice, no source).
  CHECK(find(tasks, TaskKind::float_work) == nullptr);
  // Joints are sawn; there is no release agent, so nothing is washed or sealed.
  CHECK(find(tasks, TaskKind::tooled_joint) == nullptr);
  CHECK(find(tasks, TaskKind::wash) == nullptr);
  CHECK(comes_after(tasks, *find(tasks, TaskKind::broom), *find(tasks, TaskKind::first_edge)));
  CHECK(comes_after(tasks, *find(tasks, TaskKind::clean_up), *find(tasks, TaskKind::broom)));
}

TEST_CASE("screed and bull float keep step with the placing") {
  const Job job = test::sample_job({pad(Finish::broom)});
  const std::vector<Task> tasks =
      day_tasks(job, {zone_plan(job.zones[0], 10.0, job)}, no_joints(job), default_practice());
  const Task& screed = *find(tasks, TaskKind::screed);
  CHECK(screed.duration_min(4) == 20);  // the concrete takes that long to arrive
  CHECK(screed.from_min(4) == 0);
  CHECK(screed.duration_min(1) == 39);
  CHECK(screed.end_by_min == 50);  // half an hour after the last of it
}

TEST_CASE("a window's ends become those of the task, rounded into it") {
  const Job job = test::sample_job({pad(Finish::stamp)});
  ZonePlan plan = zone_plan(job.zones[0], 10.0, job);
  plan.whole.windows[2] = window(Operation::stamp, job, 170.4, 178.4, 230.6, 242.6);
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  const Task& stamp = *find(tasks, TaskKind::stamp);
  CHECK(stamp.start_from_min == 171);
  CHECK(stamp.end_from_min == 179);
  CHECK(stamp.start_by_min == 230);
  CHECK(stamp.end_by_min == 242);
}

TEST_CASE("a large part is taken in pieces, each with its stretch of the window") {
  const Job job = test::sample_job({pad(Finish::stamp)});
  const std::vector<Task> tasks = day_tasks(job, {zone_plan(job.zones[0], 48.0, job)},
                                            no_joints(job), default_practice());  // 4 x 12 m2
  std::vector<const Task*> stamps;
  double work_person_min = 0.0;
  for (const Task& task : tasks) {
    if (task.kind != TaskKind::stamp) continue;
    stamps.push_back(&task);
    work_person_min += task.work_person_min;
  }
  REQUIRE(stamps.size() == 4);
  CHECK(work_person_min == doctest::Approx(48.0 * 60.0 / 18.6));
  // Opens 170 to 178, closes 230 to 242.
  CHECK(stamps[0]->start_from_min == 170);
  CHECK(stamps[0]->end_from_min == 172);
  CHECK(stamps[3]->start_from_min == 176);
  CHECK(stamps[3]->start_by_min == 239);
  CHECK(stamps[3]->end_by_min == 242);
  CHECK(task_words(*stamps[3]) == "stamp, pad, 4 of 4");
}

TEST_CASE("the sunny part has work of its own, by its share") {
  const Job job = test::sample_job({pad(Finish::texture_roll)});
  ZonePlan plan = zone_plan(job.zones[0], 10.0, job);
  plan.parts = {part_plan("east strip", 4.0, Finish::texture_roll, job),
                part_plan("by the wall", 6.0, Finish::texture_roll, job)};
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  CHECK(find(tasks, TaskKind::texture, "east strip")->work_person_min ==
        doctest::Approx(240.0 / 27.9));
  CHECK(find(tasks, TaskKind::first_edge, "by the wall")->work_person_min ==
        doctest::Approx(0.6 * 840.0 / 61.0));
  CHECK(find(tasks, TaskKind::texture) == nullptr);
}

TEST_CASE("a border takes the edges, outside and along the field") {
  Zone zone = pad(Finish::stamp);
  zone.border = Border{0.5, Finish::broom};
  const Job job = test::sample_job({zone});
  ZonePlan plan = zone_plan(zone, 10.0, job);
  plan.whole.area_m2 = 4.0;
  plan.border = part_plan("border", 6.0, Finish::broom, job);
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  CHECK(find(tasks, TaskKind::first_edge) == nullptr);
  CHECK(find(tasks, TaskKind::first_edge, "border")->work_person_min ==
        doctest::Approx(840.0 / 61.0));
  // The field is 4 x 1 m inside the border: 10 m more of edge.
  CHECK(find(tasks, TaskKind::detail_edge, "border")->work_person_min ==
        doctest::Approx(1440.0 / 61.0));
}

TEST_CASE("joints that are tooled take the edges' window if need be") {
  const Job job = test::sample_job({pad(Finish::stamp)});
  const std::vector<Task> tooled = day_tasks(job, {zone_plan(job.zones[0], 10.0, job)},
                                             one_joint(JointWay::tool, job), default_practice());
  const Task* joint = find(tooled, TaskKind::tooled_joint);
  REQUIRE(joint != nullptr);
  CHECK(joint->work_person_min == doctest::Approx(120.0 / 61.0));
  CHECK(joint->start_from_min == find(tooled, TaskKind::detail_edge)->start_from_min);
  CHECK(comes_after(tooled, *joint, *find(tooled, TaskKind::stamp)));
  CHECK(find(tooled, TaskKind::saw) == nullptr);
}

TEST_CASE("joints that are sawn are sawn as the saw is led") {
  const Job job = test::sample_job({pad(Finish::broom)});
  const std::vector<Task> tasks =
      day_tasks(job, {zone_plan(job.zones[0], 10.0, job)}, one_joint(JointWay::early_entry, job),
                default_practice());
  CHECK(find(tasks, TaskKind::tooled_joint) == nullptr);
  const Task* cut = find(tasks, TaskKind::saw);
  REQUIRE(cut != nullptr);
  CHECK(cut->start_from_min == 400);
  CHECK(cut->duration_min(2) == 4);
  CHECK(cut->end_by_min == 600);
  CHECK(cut->later);
  CHECK(comes_after(tasks, *cut, *find(tasks, TaskKind::detail_edge)));
  CHECK(!comes_after(tasks, *find(tasks, TaskKind::clean_up), *cut));
}

TEST_CASE("the saw's cuts in a zone are one run until the saw waits or leaves") {
  const Job job =
      test::sample_job({pad(Finish::broom), test::zone_named("walk", test::rectangle(9, 0, 5, 2))});
  CutPlan cuts = one_joint(JointWay::early_entry, job);
  cuts.cuts.resize(2);
  cuts.cuts[1].zone = 1;
  cuts.choices[1].way = JointWay::early_entry;
  const auto sawn = [&job](std::size_t cut, double from, double to) {
    SawnCut made;
    made.cut = cut;
    made.starts = minute(job, from);
    made.ends = minute(job, to);
    return made;
  };
  cuts.shifts[0].cuts = {sawn(0, 400, 404), sawn(0, 410, 414), sawn(1, 415, 419), sawn(0, 420, 424),
                         sawn(0, 450, 454)};
  const std::vector<Task> tasks =
      day_tasks(job, {zone_plan(job.zones[0], 10.0, job), zone_plan(job.zones[1], 10.0, job)}, cuts,
                default_practice());
  std::vector<int> starts;
  std::vector<const Task*> runs;
  for (const Task& task : tasks) {
    if (task.kind != TaskKind::saw) continue;
    runs.push_back(&task);
    if (task.zone == "pad") starts.push_back(task.start_from_min);
  }
  CHECK(starts == std::vector{400, 420, 450});
  // One saw is in one place at a time: each run waits for the one before, in whichever zone.
  REQUIRE(runs.size() == 4);
  CHECK(runs[1]->zone == "walk");
  for (std::size_t i = 1; i < runs.size(); ++i) CHECK(comes_after(tasks, *runs[i], *runs[i - 1]));
}

TEST_CASE("plans of other zones than the job's are refused") {
  const Job job = test::sample_job({pad(Finish::broom), pad(Finish::broom)});
  CHECK_THROWS_AS(
      day_tasks(job, {zone_plan(job.zones[0], 10.0, job)}, no_joints(job), default_practice()),
      std::invalid_argument);
}

TEST_CASE("the seal waits for the slab to dry after the wash, and for the morning") {
  const Job job = test::sample_job({pad(Finish::stamp)});  // starts 08:00
  ZonePlan plan = zone_plan(job.zones[0], 10.0, job);
  OperationWindow wash;
  wash.operation = Operation::wash;
  wash.opens = wash.open_all_over = minute(job, 23 * 60);  // 07:00
  OperationWindow seal;
  seal.operation = Operation::seal;
  seal.opens = seal.open_all_over = minute(job, 22 * 60);  // 06:00
  plan.whole.windows.push_back(wash);
  plan.whole.windows.push_back(seal);
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  const Task* washing = find(tasks, TaskKind::wash);
  const Task* sealing = find(tasks, TaskKind::seal);
  REQUIRE(washing != nullptr);
  REQUIRE(sealing != nullptr);
  CHECK(washing->start_from_min == 23 * 60);  // 07:00
  // 10 m2 at 23.2 m2/h is 26 min, then 4 h.
  CHECK(sealing->start_from_min == 23 * 60 + 26 + 240);
  CHECK(sealing->wait_after_min == 240);
  CHECK(sealing->work_person_min == doctest::Approx(2 * 600.0 / 30.9));  // two coats
}

TEST_CASE("curing compound follows the finishing, a cover the final set") {
  Job job = test::sample_job({pad(Finish::broom)});
  job.pour.curing = CuringKind::film;
  ZonePlan plan = zone_plan(job.zones[0], 10.0, job);
  plan.whole.final_set = minute(job, 420);
  std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  const Task* film = find(tasks, TaskKind::cure);
  REQUIRE(film != nullptr);
  CHECK(comes_after(tasks, *film, *find(tasks, TaskKind::detail_edge)));
  CHECK(film->end_by_min == 420);
  job.pour.curing = CuringKind::plastic;
  tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  CHECK(find(tasks, TaskKind::cure) == nullptr);
  CHECK(find(tasks, TaskKind::cover)->start_from_min == 420);
  tasks = day_tasks(job, {plan}, one_joint(JointWay::early_entry, job), default_practice());
  CHECK(comes_after(tasks, *find(tasks, TaskKind::cover), *find(tasks, TaskKind::saw)));
}

TEST_CASE("curing compound goes on part by part, none waiting for another") {
  Job job = test::sample_job({pad(Finish::texture_roll)});
  job.pour.curing = CuringKind::film;
  ZonePlan plan = zone_plan(job.zones[0], 10.0, job);
  plan.parts = {part_plan("east strip", 4.0, Finish::texture_roll, job),
                part_plan("by the wall", 6.0, Finish::texture_roll, job)};
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  const Task* film = find(tasks, TaskKind::cure, "east strip");
  REQUIRE(film != nullptr);
  CHECK(film->work_person_min == doctest::Approx(240.0 / 186.0));
  CHECK(comes_after(tasks, *film, *find(tasks, TaskKind::texture, "east strip")));
  CHECK_FALSE(comes_after(tasks, *film, *find(tasks, TaskKind::texture, "by the wall")));
}

TEST_CASE("washing, sealing and covers wait for a border that sets after the field") {
  Zone zone = pad(Finish::stamp);
  zone.border = Border{0.5, Finish::broom};
  Job job = test::sample_job({zone});
  job.pour.curing = CuringKind::plastic;
  const auto opening = [&](Operation operation, double minutes) {
    OperationWindow made;
    made.operation = operation;
    made.opens = made.open_all_over = minute(job, minutes);
    return made;
  };
  ZonePlan plan = zone_plan(zone, 10.0, job);
  plan.whole.final_set = minute(job, 420);
  plan.whole.windows.push_back(opening(Operation::walk, 23 * 60));
  plan.whole.windows.push_back(opening(Operation::wash, 23 * 60));
  plan.whole.windows.push_back(opening(Operation::seal, 24 * 60));
  plan.border = part_plan("border", 6.0, Finish::broom, job);
  plan.border->final_set = minute(job, 480);
  plan.border->windows.push_back(opening(Operation::walk, 25 * 60));
  plan.border->windows.push_back(opening(Operation::seal, 32 * 60));
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  CHECK(find(tasks, TaskKind::cover)->start_from_min == 480);
  CHECK(find(tasks, TaskKind::wash)->start_from_min == 25 * 60);
  CHECK(find(tasks, TaskKind::seal)->start_from_min == 32 * 60);
  plan.border->final_set.reset();
  plan.border->windows.back().open_all_over.reset();
  const std::vector<Task> fewer = day_tasks(job, {plan}, no_joints(job), default_practice());
  CHECK(find(fewer, TaskKind::cover) == nullptr);
  CHECK(find(fewer, TaskKind::seal) == nullptr);
}

TEST_CASE("a stamped border of a broomed field is washed and sealed") {
  Zone zone = pad(Finish::broom);
  zone.border = Border{0.5, Finish::stamp};
  const Job job = test::sample_job({zone});
  ZonePlan plan = zone_plan(zone, 10.0, job);
  plan.border = part_plan("border", 6.0, Finish::stamp, job);
  for (const Operation operation : {Operation::walk, Operation::wash, Operation::seal}) {
    OperationWindow window;
    window.operation = operation;
    window.opens = window.open_all_over = minute(job, 23 * 60);
    if (operation != Operation::wash) plan.whole.windows.push_back(window);
    plan.border->windows.push_back(window);
  }
  CHECK(plan.is_washed());
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  REQUIRE(find(tasks, TaskKind::wash) != nullptr);
  CHECK(find(tasks, TaskKind::wash)->start_from_min == 23 * 60);
  CHECK(find(tasks, TaskKind::seal) != nullptr);
}

TEST_CASE("a step is stripped and faced in its own window") {
  Zone zone = pad(Finish::broom);
  FormedFace face;
  face.length_m = 3.05;
  zone.faces = {face};
  const Job job = test::sample_job({zone});
  ZonePlan plan = zone_plan(zone, 10.0, job);
  plan.faces = {
      {"face-1", "step face", std::nullopt, window(Operation::strip, job, 140, 140, 200, 200)}};
  const std::vector<Task> tasks = day_tasks(job, {plan}, no_joints(job), default_practice());
  const Task* step = find(tasks, TaskKind::strip_face);
  REQUIRE(step != nullptr);
  CHECK(step->work_person_min == doctest::Approx(30.0));  // 20 ft/h, ours
  CHECK(step->end_by_min == 200);
}

}  // namespace slabtide
