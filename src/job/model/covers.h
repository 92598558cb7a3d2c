#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// The covers on a zone: those that name it and those that name no zone.
std::vector<Cover> covers_on(const Zone& zone, const Pour& pour);

/// What the crew lays on a zone to cure it, plastic or blankets; empty if the job cures otherwise,
/// or lays covers on the zone by the hour.
std::optional<CuringKind> curing_cover(const Zone& zone, const Pour& pour);

/// Whether blankets are laid on the zone, to cure it or by the hour.
bool lies_under_blankets(const Zone& zone, const Pour& pour);

/// "plastic" or "blanket", of a cover.
std::string_view cover_words(CuringKind cover);

}  // namespace slabtide
