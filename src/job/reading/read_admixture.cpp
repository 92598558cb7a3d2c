#include "read_admixture.h"

#include <array>

#include <fmt/format.h>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr Range either_way_h{limits::sooner_h.low, limits::later_h.high};

constexpr auto admixture_kinds = std::to_array<Word<AdmixtureKind>>(
    {{"retarder", AdmixtureKind::retarder},
     {"stabilizer", AdmixtureKind::stabiliser},
     {"stabiliser", AdmixtureKind::stabiliser},
     {"calcium chloride", AdmixtureKind::accelerator_chloride},
     {"non-chloride accelerator", AdmixtureKind::accelerator_non_chloride}});

bool retards(AdmixtureKind kind) {
  return kind == AdmixtureKind::retarder || kind == AdmixtureKind::stabiliser;
}

void check_one_way(TableReader& table) {
  int given = 0;
  for (const auto* const key : {"dose", "dose_percent", "shift"}) given += table.has(key) ? 1 : 0;
  if (given == 1) return;
  table.error("", given == 0 ? "neither dose nor shift is given" : "dose and shift are both given",
              "write the dose, or the supplier's own `shift` of initial set in hours at 73 °F");
}

/// Calcium chloride is dosed by mass of cement, everything else by volume.
void check_dose_kind(TableReader& table, AdmixtureKind kind) {
  const bool chloride = kind == AdmixtureKind::accelerator_chloride;
  if (chloride && table.has("dose")) {
    table.error("dose", "calcium chloride is dosed in percent of the cement",
                "write `dose_percent = 1`");
  }
  if (!chloride && table.has("dose_percent")) {
    table.error("dose_percent", "only calcium chloride is dosed in percent",
                "write `dose` in fl oz/cwt, or `dose_ml_100kg`");
  }
}

}  // namespace

Admixture read_admixture(TableReader& table) {
  Admixture admixture;
  const auto kind = table.word("kind", admixture_kinds, Presence::required);
  set(admixture.kind, kind);
  // An unknown kind must not also be reported as a wrong dose.
  const bool later = kind && retards(*kind);
  admixture.dose_ml_100kg =
      table.quantity("dose", dose_quantity,
                     later ? limits::retarder_doses_ml_100kg : limits::accelerator_doses_ml_100kg);
  admixture.dose_percent =
      table.number("dose_percent", limits::chlorides_percent, "percent of the cement");
  admixture.shift_h = table.quantity("shift", hours_quantity,
                                     !kind   ? either_way_h
                                     : later ? limits::later_h
                                             : limits::sooner_h);
  if (kind) check_dose_kind(table, *kind);
  check_one_way(table);
  return admixture;
}

std::vector<Admixture> read_admixtures(TableReader& table) {
  std::vector<Admixture> admixtures;
  constexpr auto own_keys = std::to_array<std::string_view>({"kind", "dose", "shift"});
  table.refuse_without_header("admixture", own_keys);
  table.in_each("admixture",
                [&](TableReader& each) { admixtures.push_back(read_admixture(each)); });
  return admixtures;
}

std::optional<std::vector<Admixture>> read_own_admixtures(TableReader& table) {
  auto admixtures = read_admixtures(table);
  if (!table.none_or_listed("admixture", "admixtures")) return std::nullopt;
  return admixtures;
}

}  // namespace slabtide
