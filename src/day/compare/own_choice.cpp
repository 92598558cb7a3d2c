#include "own_choice.h"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "admixture_change.h"
#include "admixture_choices.h"
#include "day_choices.h"
#include "job/model/limits.h"

namespace slabtide {

namespace {

/// Changes a job as a note says, until something is not possible.
class OwnChange {
 public:
  OwnChange(const ChoiceContext& context, const OptionNote& note)
      : context_(context), note_(note), job_(context.job) {}

  bool apply() {
    return find_zones() && change_start() && change_order() && change_crew() && change_shelter() &&
           change_admixtures();
  }
  Job take() { return std::move(job_); }
  const std::string& fault() const { return fault_; }

 private:
  bool refuse(std::string why) {
    fault_ = std::move(why);
    return false;
  }

  bool find(const std::vector<std::string>& names, std::vector<std::size_t>& found) {
    for (const std::string& name : names) {
      const auto zone = std::find_if(job_.zones.begin(), job_.zones.end(),
                                     [&name](const Zone& z) { return z.name == name; });
      if (zone == job_.zones.end()) return refuse(fmt::format("there is no zone '{}'", name));
      found.push_back(static_cast<std::size_t>(zone - job_.zones.begin()));
    }
    return true;
  }

  bool find_zones() {
    return find(note_.admixture_zones, admixture_zones_) && find(note_.shaded_zones, shaded_zones_);
  }

  bool change_start() {
    if (!note_.start_shift_min) return true;
    job_ = started_later(job_, *note_.start_shift_min);
    job_.pour.date = job_.site.time_zone.local_from_utc(job_.pour.start).date();
    return true;
  }

  bool change_order() {
    if (note_.placing_sequence.empty()) return true;
    if (!std::is_permutation(note_.placing_sequence.begin(), note_.placing_sequence.end(),
                             job_.pour.placing_sequence.begin(),
                             job_.pour.placing_sequence.end())) {
      return refuse("its zone order does not name every zone once");
    }
    job_.pour.placing_sequence = note_.placing_sequence;
    return true;
  }

  bool change_crew() {
    if (!note_.finishers) return true;
    if (*note_.finishers < 1) return refuse("somebody must be there");
    if (!limits::crew_sizes.holds(*note_.finishers)) return refuse("no pour has use for so many");
    job_.crew.finishers = *note_.finishers;
    return true;
  }

  bool change_shelter() {
    for (const std::size_t i : shaded_zones_) job_.zones[i].shaded = true;
    if (note_.wind_ratio) job_.site.measured_wind_ratio = note_.wind_ratio;
    for (const SawKind saw : note_.saws) {
      if (std::count(job_.pour.saws.begin(), job_.pour.saws.end(), saw) == 0) {
        job_.pour.saws.push_back(saw);
      }
    }
    return true;
  }

  bool change_admixtures() {
    if (!note_.admixtures) return true;
    if (note_.last_loads) return change_last_loads(*note_.last_loads);
    if (!admixture_zones_.empty()) {
      if (!job_.order.loads.empty()) {
        return refuse("loads have admixtures of their own, which come before a zone's");
      }
      job_ = in_zones(job_, admixture_zones_, *note_.admixtures);
      return true;
    }
    change_all_admixtures(job_, [this](const auto&) { return *note_.admixtures; });
    return true;
  }

  bool change_last_loads(int number) {
    const std::size_t of = context_.run.order.loads.size();
    if (number < 1 || static_cast<std::size_t>(number) > of) {
      return refuse(fmt::format("it wants the last {} loads and there {} {}", number,
                                of == 1 ? "is" : "are", of));
    }
    job_ = in_last_count(job_, of, *note_.admixtures, static_cast<std::size_t>(number)).job;
    return true;
  }

  const ChoiceContext& context_;
  const OptionNote& note_;
  Job job_;
  std::vector<std::size_t> admixture_zones_;
  std::vector<std::size_t> shaded_zones_;
  std::string fault_;
};

}  // namespace

void add_own_choice(const ChoiceContext& context, const OptionNote& note, ChoiceList& list) {
  OwnChange change(context, note);
  if (change.apply()) {
    list.add(ChoiceKind::own, note.name, fmt::format("take your own option '{}'", note.name),
             change.take());
  } else {
    list.leave_out(note.name, change.fault());
  }
}

}  // namespace slabtide
