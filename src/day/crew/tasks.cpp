#include "slabtide/day/crew/tasks.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <stdexcept>

#include "day/windows/working_time.h"
#include "job/geometry/placing_sequence.h"
#include "job/geometry/zone_geometry.h"
#include "job/model/covers.h"
#include "saw_runs.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Washing or a coat of sealer may take this long before another worker is used (ours).
constexpr double unhurried_min = 120.0;

/// Converts instants to whole minutes from the start of the pour.
class Minutes {
 public:
  explicit Minutes(const Job& job) : start_(job.pour.start) {}

  int up(UtcTime at) const { return static_cast<int>(std::ceil(exact(at))); }
  int down(UtcTime at) const { return static_cast<int>(std::floor(exact(at))); }
  std::optional<int> down(const std::optional<UtcTime>& at) const {
    return at ? std::optional(down(*at)) : std::nullopt;
  }

 private:
  double exact(UtcTime at) const { return seconds_between(start_, at) / seconds_per_minute; }
  UtcTime start_;
};

UtcTime between(UtcTime from, UtcTime to, double fraction) {
  return after_seconds(from, fraction * seconds_between(from, to));
}

/// The work on a part besides its area.
struct PartWork {
  const PartPlan& plan;
  Finish finish;
  double first_edge_m = 0.0;
  double detail_edge_m = 0.0;
  double joint_m = 0.0;  ///< to be tooled
};

double inner_line_m(const Zone& zone) {
  double length_m = 0.0;
  for (const Outline& ring : inset(zone.outline, zone.border->width_m)) {
    length_m += perimeter_m(ring);
  }
  return length_m;
}

/// The operations of a finish, with joints if they are tooled and without if not.
std::vector<Operation> operations_of(const PartWork& work) {
  std::vector<Operation> operations = operations_of(work.finish);
  const auto joint = std::find(operations.begin(), operations.end(), Operation::tooled_joint);
  const bool listed = joint != operations.end();
  if (listed && work.joint_m <= 0.0) operations.erase(joint);
  if (!listed && work.joint_m > 0.0) {
    operations.insert(std::find(operations.begin(), operations.end(), Operation::detail_edge),
                      Operation::tooled_joint);
  }
  return operations;
}

double quantity_of(Operation operation, const PartWork& work) {
  switch (operation) {
    case Operation::first_edge:
      return work.first_edge_m;
    case Operation::detail_edge:
      return work.detail_edge_m;
    case Operation::tooled_joint:
      return work.joint_m;
    default:
      return work.plan.area_m2;
  }
}

/// Joints use the window of the edges if the finish has none for joints.
const OperationWindow* window_of(Operation operation, const PartPlan& part) {
  const OperationWindow* window = part.window(operation);
  if (window == nullptr && operation == Operation::tooled_joint) {
    return part.window(Operation::detail_edge);
  }
  return window;
}

/// Whether powder, salt or retarded paste is washed off it later: a film before that would lock it
/// in (common practice, no source).
bool is_washed_later(const PartPlan& part) {
  return part.window(Operation::wash) != nullptr || part.window(Operation::expose) != nullptr;
}

/// A stretch of sawing and where it is.
struct ZoneSawRun {
  std::size_t zone = 0;
  SawRun run;
};

/// Makes the day's list of tasks: zone after zone, then the saws', then what comes after.
class DayTasks {
 public:
  DayTasks(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
           const Practice& practice)
      : job_(job),
        zones_(zones),
        cuts_(cuts),
        practice_(practice),
        minutes_(job),
        done_(job.zones.size()) {}

  DayWork make() {
    for (const std::size_t zone : zones_in_order(job_)) add_finishing(zone);
    add_saws();
    for (const std::size_t zone : zones_in_order(job_)) add_after_finishing(zone);
    add_clean_up();
    return {std::move(tasks_), std::move(after_plan_)};
  }

 private:
  using Index = std::optional<std::size_t>;

  /// What is done on a zone before the saw comes, and the last that the saw does there.
  struct Done {
    std::vector<std::size_t> finishing;  ///< the screeding first
    Index sawed;
  };

  /// A task with its work and workers; empty if there is nothing to do.
  std::optional<Task> task(TaskKind kind, Index zone, double quantity) const {
    if (!(quantity > 0.0)) return std::nullopt;
    const WorkRule& rule = practice_.crew.rule(kind);
    Task made;
    made.kind = kind;
    if (zone) made.place = PlaceId{*zone, {}};
    if (zone) made.zone = zones_[*zone].name;
    made.work_person_min = quantity / rule.rate_per_person_h * minutes_per_hour;
    made.min_hands = rule.min_hands;
    made.max_hands = rule.max_hands;
    return made;
  }

  std::size_t add(Task task) {
    tasks_.push_back(std::move(task));
    return tasks_.size() - 1;
  }

  /// Work without urgency gets only as many workers as finish it in reasonable time.
  void take_few(Task& task) const {
    const int enough = static_cast<int>(std::ceil(task.work_person_min / unhurried_min));
    task.max_hands = std::clamp(enough, task.min_hands, task.max_hands);
  }

  /// Each piece gets its section of the part's window, assuming that the window moves evenly from
  /// the first tenth of the part to the last.
  void put_window(Task& task, const OperationWindow& window) const {
    const UtcTime opens = *window.opens;
    const UtcTime open_all_over = window.open_all_over.value_or(opens);
    const double from = static_cast<double>(task.piece - 1) / task.pieces;
    const double to = static_cast<double>(task.piece) / task.pieces;
    task.start_from_min = minutes_.up(between(opens, open_all_over, from));
    task.end_from_min = minutes_.up(between(opens, open_all_over, to));
    if (!window.closes) return;
    const UtcTime closed_all_over = window.closed_all_over.value_or(*window.closes);
    task.start_by_min = minutes_.down(between(*window.closes, closed_all_over, from));
    task.end_by_min = minutes_.down(between(*window.closes, closed_all_over, to));
  }

  void add_finishing(std::size_t index) {
    const Zone& zone = job_.zones[index];
    const ZonePlan& plan = zones_[index];
    const std::size_t screed = add_screed(index);
    std::vector<std::size_t> finishing{screed};
    const auto finish = [&](const PartWork& work) {
      std::vector<std::size_t> done{screed};
      const std::size_t from = tasks_.size();
      add_part(index, work, screed);
      for (std::size_t i = from; i < tasks_.size(); ++i) done.push_back(i);
      if (!is_washed_later(work.plan)) add_cure(index, work.plan, done);
      finishing.insert(finishing.end(), done.begin() + 1, done.end());
    };
    for (const PartWork& work : field_work(index)) finish(work);
    if (plan.border) finish(border_work(zone, plan));
    for (std::size_t i = 0; i < plan.faces.size(); ++i) {
      if (const Index face = add_face(index, i, screed)) finishing.push_back(*face);
    }
    done_[index].finishing = std::move(finishing);
  }

  void add_after_finishing(std::size_t index) {
    const Done& done = done_[index];
    add_covers(index, done);
    add_next_day(index, add_wash_off(index, done.sawed.value_or(done.finishing.front())));
  }

  std::size_t add_screed(std::size_t zone) {
    const ZonePlan& plan = zones_[zone];
    Task made = *task(TaskKind::screed, zone, plan.area_m2);
    const double within_s = practice_.crew.hours.bull_float_within_min * seconds_per_minute;
    made.min_duration_min =
        seconds_between(plan.placed.start, plan.placed.end) / seconds_per_minute;
    made.start_from_min = minutes_.up(plan.placed.start);
    made.end_from_min = minutes_.up(plan.placed.end);
    made.start_by_min = minutes_.down(after_seconds(plan.placed.start, within_s));
    made.end_by_min = minutes_.down(after_seconds(plan.placed.end, within_s));
    return add(std::move(made));
  }

  /// The edges of a zone with a border belong to the border.
  std::vector<PartWork> field_work(std::size_t index) const {
    const Zone& zone = job_.zones[index];
    const ZonePlan& plan = zones_[index];
    std::vector<const PartPlan*> parts;
    for (const PartPlan& part : plan.parts) parts.push_back(&part);
    if (parts.empty()) parts.push_back(&plan.whole);
    double area_m2 = 0.0;
    for (const PartPlan* part : parts) area_m2 += part->area_m2;
    const double edge_m = plan.border ? 0.0 : perimeter_m(zone.outline);
    const bool tooled = cuts_.choices[index].way == JointWay::tool;
    const double joint_m = tooled ? joint_length_m(cuts_.joints[index]) : 0.0;
    std::vector<PartWork> work;
    for (const PartPlan* part : parts) {
      const double fraction = part->area_m2 / area_m2;
      work.push_back(
          {*part, zone.finish, edge_m * fraction, edge_m * fraction, joint_m * fraction});
    }
    return work;
  }

  PartWork border_work(const Zone& zone, const ZonePlan& plan) const {
    const double outer_m = perimeter_m(zone.outline);
    return {*plan.border, zone.border->finish, outer_m, outer_m + inner_line_m(zone), 0.0};
  }

  void add_part(std::size_t zone, const PartWork& work, std::size_t before) {
    const PieceRules& rules = practice_.crew.pieces;
    const auto pieces = static_cast<int>(
        std::clamp<long>(std::lround(work.plan.area_m2 / rules.area_m2), 1, rules.max));
    for (int piece = 1; piece <= pieces; ++piece) add_piece(zone, work, {piece, pieces}, before);
  }

  struct Piece {
    int number = 1;
    int of = 1;
  };

  void add_piece(std::size_t zone, const PartWork& work, Piece piece, std::size_t before) {
    for (const Operation operation : operations_of(work)) {
      const OperationWindow* window = window_of(operation, work.plan);
      auto made = task(task_kind_of(operation), zone, quantity_of(operation, work) / piece.of);
      if (!made || window == nullptr) continue;
      made->place->part = work.plan.id;
      made->part = work.plan.name;
      if (!window->opens) {
        if (piece.number == 1) after_plan_.push_back(std::move(*made));
        continue;
      }
      made->piece = piece.number;
      made->pieces = piece.of;
      put_window(*made, *window);
      made->after = {before};
      before = add(std::move(*made));
    }
  }

  Index add_face(std::size_t zone, std::size_t face, std::size_t before) {
    const ZonePlan& plan = zones_[zone];
    auto made = task(TaskKind::strip_face, zone, job_.zones[zone].faces[face].length_m);
    if (!made) return std::nullopt;
    made->place->part = plan.faces[face].id;
    if (plan.faces.size() > 1) made->part = plan.faces[face].name;
    if (!plan.faces[face].strip.opens) {
      after_plan_.push_back(std::move(*made));
      return std::nullopt;
    }
    put_window(*made, plan.faces[face].strip);
    made->after = {before};
    return add(std::move(*made));
  }

  TaskKind cure_kind() const {
    return job_.finish_work.sealer == SealerKind::cure_and_seal ? TaskKind::cure_and_seal
                                                                : TaskKind::cure;
  }

  /// Curing compound, or cure-and-seal, goes onto a part as soon as that part is finished, so that
  /// no part waits for another, nor the saw for all.
  void add_cure(std::size_t zone, const PartPlan& part, std::vector<std::size_t>& finishing) {
    if (job_.pour.curing != CuringKind::film) return;
    auto made = task(cure_kind(), zone, part.area_m2);
    if (!made) return;
    made->place->part = part.id;
    made->part = part.name;
    made->start_from_min = minutes_.up(part.sheen_gone.value_or(zones_[zone].placed.end));
    made->end_by_min = minutes_.down(part.final_set);
    made->after = finishing;
    finishing.push_back(add(std::move(*made)));
  }

  /// Covers are laid at the time the user gives; one to cure under once it no longer marks the
  /// surface and the saw is through.
  void add_covers(std::size_t zone, const Done& done) {
    const ZonePlan& plan = zones_[zone];
    for (const Cover& cover : covers_on(job_.zones[zone], job_.pour)) {
      if (cover.from > plan.placed.end) add_cover(zone, cover.from, done.finishing);
    }
    const auto final_set = plan.final_set();
    if (!curing_cover(job_.zones[zone], job_.pour) || !final_set) return;
    std::vector<std::size_t> after = done.finishing;
    if (done.sawed) after.push_back(*done.sawed);
    add_cover(zone, *final_set, std::move(after));
  }

  void add_cover(std::size_t zone, UtcTime at, std::vector<std::size_t> after) {
    Task made = *task(TaskKind::cover, zone, zones_[zone].area_m2);
    made.start_from_min = minutes_.up(at);
    made.after = std::move(after);
    made.later = true;
    add(std::move(made));
  }

  /// Each saw goes from run to run as it is led through the cuts: it is never in two places.
  void add_saws() {
    std::vector<ZoneSawRun> runs;
    for (std::size_t zone = 0; zone < job_.zones.size(); ++zone) {
      for (const SawRun& run : saw_runs(zone, cuts_)) runs.push_back({zone, run});
    }
    std::stable_sort(runs.begin(), runs.end(), [](const ZoneSawRun& a, const ZoneSawRun& b) {
      return a.run.start < b.run.start;
    });
    std::map<JointWay, std::size_t> last;
    for (const ZoneSawRun& each : runs) {
      const JointWay way = cuts_.choices[each.zone].way;
      Task made = saw_task(each);
      if (const auto before = last.find(way); before != last.end()) {
        made.after.push_back(before->second);
      }
      done_[each.zone].sawed = last[way] = add(std::move(made));
    }
  }

  /// A run lasts as long as its cuts.
  Task saw_task(const ZoneSawRun& each) const {
    const WorkRule& rule = practice_.crew.rule(TaskKind::saw);
    const SawRun& run = each.run;
    Task made;
    made.kind = TaskKind::saw;
    made.place = PlaceId{each.zone, {}};
    made.zone = zones_[each.zone].name;
    made.min_hands = rule.min_hands;
    made.max_hands = rule.max_hands;
    made.min_duration_min = seconds_between(run.start, run.end) / seconds_per_minute;
    made.work_person_min = made.min_duration_min * rule.min_hands;
    made.start_from_min = minutes_.up(run.start);
    made.end_from_min = minutes_.up(run.end);
    if (run.has_limit) {
      // So that its minutes late are the whole minutes by which its latest cut is (`worked_shift`).
      const UtcTime start_by = after_seconds(run.start, run.slack_min * seconds_per_minute);
      made.end_by_min = minutes_.up(start_by) + whole_minutes(made.min_duration_min);
    }
    made.after = done_[each.zone].finishing;
    made.later = true;
    return made;
  }

  /// The retarded paste is washed off while the retarder still holds it; the task that the next
  /// waits for.
  std::size_t add_wash_off(std::size_t zone, std::size_t before) {
    const ZonePlan& plan = zones_[zone];
    for (const PartPlan* part : {&plan.whole, plan.border ? &*plan.border : nullptr}) {
      const OperationWindow* window = part == nullptr ? nullptr : part->window(Operation::expose);
      if (window == nullptr) continue;
      Task made = *task(TaskKind::expose, zone, part->area_m2);
      made.place->part = part->id;
      made.part = part->name;
      if (!window->opens) {
        after_plan_.push_back(std::move(made));
        continue;
      }
      put_window(made, *window);
      made.after = {before};
      made.later = true;
      before = add(std::move(made));
    }
    return before;
  }

  /// First release agent and slurry are washed off, then the dry slab is sealed.
  void add_next_day(std::size_t zone, std::size_t before) {
    const double dry_min = practice_.set.dry_after_wash_h * minutes_per_hour;
    if (!zones_[zone].is_washed()) {
      const std::size_t cured = add_late_cure(zone, before, dry_min);
      return add_seal(zone, cured, zones_[zone].is_exposed() ? dry_min : 0.0);
    }
    const auto wash_opens = zones_[zone].opens_after_set(Operation::wash);
    if (!wash_opens) return;
    Task made = *task(TaskKind::wash, zone, zones_[zone].area_m2);
    made.start_from_min = minutes_.up(*wash_opens);
    made.after = {before};
    made.later = true;
    take_few(made);
    const std::size_t washed = add(std::move(made));
    add_seal(zone, add_late_cure(zone, washed, dry_min), dry_min);
  }

  /// What is washed is cured after it, by a compound right then, by a cure-and-seal once it is dry;
  /// the task that the next waits for.
  std::size_t add_late_cure(std::size_t zone, std::size_t before, double dry_min) {
    if (job_.pour.curing != CuringKind::film) return before;
    const ZonePlan& plan = zones_[zone];
    double area_m2 = is_washed_later(plan.whole) ? plan.whole.area_m2 : 0.0;
    if (plan.border && is_washed_later(*plan.border)) area_m2 += plan.border->area_m2;
    auto made = task(cure_kind(), zone, area_m2);
    if (!made) return before;
    const bool seals = made->kind == TaskKind::cure_and_seal;
    const double wait_min = seals ? dry_min : 0.0;
    const UtcTime from = ends_at_best(before, wait_min);
    made->start_from_min =
        minutes_.up(seals ? next_working_time(from, job_, practice_.crew.hours) : from);
    made->after = {before};
    made->wait_after_min = static_cast<int>(std::ceil(wait_min));
    made->later = true;
    take_few(*made);
    return add(std::move(*made));
  }

  /// The earliest end of a task, with a wait after it.
  UtcTime ends_at_best(std::size_t task, double wait_min) const {
    const Task& last = tasks_[task];
    return after_seconds(
        job_.pour.start,
        (last.start_from_min + last.duration_min(last.max_hands) + wait_min) * seconds_per_minute);
  }

  void add_seal(std::size_t zone, std::size_t before, double dry_min) {
    const ZonePlan& plan = zones_[zone];
    const auto seal_opens = plan.opens_after_set(Operation::seal);
    if (!plan.is_sealed() || !is_decorative(job_.zones[zone]) || !seal_opens) return;
    Task made = *task(TaskKind::seal, zone, plan.area_m2 * practice_.crew.coverage.sealer_coats);
    const UtcTime dry_at = ends_at_best(before, dry_min);
    made.start_from_min =
        minutes_.up(next_working_time(std::max(*seal_opens, dry_at), job_, practice_.crew.hours));
    made.after = {before};
    made.wait_after_min = static_cast<int>(std::ceil(dry_min));
    made.later = true;
    take_few(made);
    add(std::move(made));
  }

  void add_clean_up() {
    Task made = *task(TaskKind::clean_up, std::nullopt, 1.0);
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
      if (!tasks_[i].later) made.after.push_back(i);
    }
    add(std::move(made));
  }

  const Job& job_;
  const std::vector<ZonePlan>& zones_;
  const CutPlan& cuts_;
  const Practice& practice_;
  Minutes minutes_;
  std::vector<Done> done_;  ///< of each zone
  std::vector<Task> tasks_;
  std::vector<Task> after_plan_;
};

}  // namespace

DayWork day_work(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                 const Practice& practice) {
  if (zones.size() != job.zones.size()) {
    throw std::invalid_argument("day's tasks: the plans are not of this job's zones");
  }
  return DayTasks(job, zones, cuts, practice).make();
}

}  // namespace slabtide
