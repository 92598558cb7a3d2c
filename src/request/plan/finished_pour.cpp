#include "finished_pour.h"

#include <algorithm>
#include <ostream>
#include <utility>

#include <fmt/format.h>

#include "core/utf8.h"
#include "job/records/mix_book_edit.h"
#include "slabtide/day/field/learned_pour.h"
#include "slabtide/request/plan/plan_request.h"

namespace slabtide {

namespace {

/// What the book knew before the day of a pour, since its plan could not use more.
MixBook known_before(MixBook book, const Job& job) {
  for (BookedMix& mix : book.mixes) {
    std::erase_if(mix.pours, [&job](const BookedPour& pour) { return pour.date >= job.pour.date; });
  }
  return book;
}

std::string told_of(const std::string& mix, const BookedPour& pour) {
  if (pour.readings == 0) return printable(mix) + ", no reading of the setting";
  return fmt::format("{}, set times by {:.2f}, from {} reading{}", printable(mix), pour.set_factor,
                     pour.readings, pour.readings == 1 ? "" : "s");
}

}  // namespace

std::vector<CheckedObservation> checked_by_hour(const PlannedPour& pour) {
  std::vector<CheckedObservation> checked =
      check_back(pour.journal, pour.job, pour.run, pour.plan, pour.practice);
  std::stable_sort(checked.begin(), checked.end(),
                   [&pour](const CheckedObservation& a, const CheckedObservation& b) {
                     const std::vector<Observation>& readings = pour.journal.readings;
                     return readings[a.reading].at < readings[b.reading].at;
                   });
  return checked;
}

std::optional<Lesson> learn_job(const std::string& path, const Job& job, const std::string& book,
                                const Sources& sources, std::ostream& findings, int threads) {
  const MixBook known = read_mix_book(book).value.value_or(MixBook{});
  auto loaded = load_job({.path = path}, sources, known_before(known, job), findings);
  if (!loaded) return std::nullopt;
  const auto planned = plan_loaded(std::move(*loaded), findings, threads);
  if (!planned) return std::nullopt;
  const BookedPour pour =
      learn_pour(planned->journal, planned->job, planned->run, planned->plan, planned->practice);
  const std::string& mix = planned->job.mix.name;
  return Lesson{with_pour(book, mix, pour), told_of(mix, pour)};
}

}  // namespace slabtide
