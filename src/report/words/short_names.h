#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// Columns of a zone's name on the truck sheet, which is one side whatever the names (ours).
inline constexpr std::size_t max_short_name = 22;

/// The text, or what of it has room with an ellipsis in so many columns.
std::string cut_to(std::string_view text, std::size_t columns);

/// The text with every longer name of a zone cut short, with an ellipsis: without its end or, where
/// that leaves the same of several zones, without the words that they begin with.
std::string short_names(std::string_view text, const Job& job);

}  // namespace slabtide
