#include "read_finish_work.h"

#include "job/toml/job_words.h"

namespace slabtide {

namespace {

constexpr auto releases = std::to_array<Word<ReleaseKind>>(
    {{"powder", ReleaseKind::powder}, {"liquid", ReleaseKind::liquid}});
constexpr auto sealers =
    std::to_array<Word<SealerKind>>({{"sealer", SealerKind::sealer},
                                     {"cure and seal", SealerKind::cure_and_seal},
                                     {"none", SealerKind::none}});

}  // namespace

FinishWork read_finish_work(TableReader& table) {
  FinishWork work;
  set(work.release, table.word("release", releases));
  set(work.sealer, table.word("sealer", sealers));
  work.wash_after_h = table.quantity("wash_after", hours_quantity, limits::wash_waits_h);
  work.wash_off_after_h =
      table.quantity("wash_off_after", hours_quantity, limits::wash_off_waits_h);
  work.wash_off_before_h =
      table.quantity("wash_off_before", hours_quantity, limits::wash_off_waits_h);
  if (work.wash_off_after_h && work.wash_off_before_h &&
      *work.wash_off_after_h >= *work.wash_off_before_h) {
    table.error("wash_off_before", "is no later than `wash_off_after`",
                "both count from placing; see the label");
  }
  work.seal_after_days = table.number("seal_after_days", limits::seal_waits_days, "days");
  if (work.seal_after_days && work.sealer != SealerKind::sealer) {
    table.warning("seal_after_days", "has no effect: no sealer is put on later",
                  "say `sealer = \"sealer\"`, or leave it out");
  }
  return work;
}

void cure_with_sealer(TableReader& table, Job& job, bool curing_is_given) {
  if (job.finish_work.sealer != SealerKind::cure_and_seal) return;
  if (curing_is_given && job.pour.curing != CuringKind::film) {
    table.error("sealer", "a cure-and-seal is the curing, and the pour names another",
                "leave `curing` out of [pour], or seal later: `sealer = \"sealer\"`");
  }
  if (job.finish_work.release == ReleaseKind::powder) {
    table.warning("sealer",
                  "a cure-and-seal has to wait until the powder is washed off, and nothing cures "
                  "the slab till then",
                  "use a liquid release and it goes on the same day");
  }
  job.pour.curing = CuringKind::film;
}

}  // namespace slabtide
