#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "page_template.h"
#include "slabtide/day/windows/band.h"
#include "slabtide/job/model/job.h"

// Times and figures for the holes of a page. Each carries the JSON pointer (RFC 6901) of what
// it shows in the plan's JSON, so that one can be held against the other.

namespace slabtide {

/// "/zones/0/opens" from "/zones", 0 and "opens".
std::string pointer(std::string_view base, std::size_t index, std::string_view key = {});

/// The job's name, or its site's where it has none.
std::string page_title(const Job& job);

/// For page_time: day and clock. Where there is no time, a dash.
View time_view(std::string_view json, const std::optional<UtcTime>& time, const Job& job);

/// For page_figure: `value` as in the JSON (rounded to hundredths, as there), `words` as shown.
View figure_view(std::string_view json, double value, std::string_view words);

/// The same where the JSON has the value as it is.
View exact_figure_view(std::string_view json, double value, std::string_view words);

/// For page_band: between which hours a time lies on eight days of ten; nothing where that is not
/// known. `json` points to the band.
std::vector<View> band_views(const std::string& json, const std::optional<TimeBand>& band,
                             const Job& job);

/// Time and figure filled in: ready markup.
std::string page_time(std::string_view json, const std::optional<UtcTime>& time, const Job& job);
std::string page_figure(std::string_view json, double value, std::string_view words);

}  // namespace slabtide
