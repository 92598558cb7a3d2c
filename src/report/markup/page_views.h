#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "page_template.h"
#include "slabtide/day/windows/band.h"
#include "slabtide/job/model/job.h"

// Times and figures for a page's templates. Each has the JSON pointer (RFC 6901) of the same value
// in the plan's JSON, so that the two can be compared.

namespace slabtide {

/// "/zones/0/opens" from "/zones", 0 and "opens".
std::string pointer(std::string_view base, std::size_t index, std::string_view key = {});

/// The job's name, or its site's name if it has none.
std::string page_title(const Job& job);

/// A time and its pointer in the JSON.
struct PointedTime {
  UtcTime at;
  std::string json;
};

/// Both ends of a span for page_time, the one to be shown right after the other: AM or PM and the
/// weekday are said once where one will do.
struct SpanViews {
  View from;
  View to;
};
SpanViews span_views(const PointedTime& from, const PointedTime& to, const Job& job);

/// For page_time: day and clock; a dash if there is no time.
View time_view(std::string_view json, const std::optional<UtcTime>& time, const Job& job);
/// The same, with the weekday on another day than `home`; always, if that is no date.
View time_view_from(Date home, std::string_view json, const std::optional<UtcTime>& time,
                    const Job& job);

/// For page_figure: `value` as in the JSON (rounded to hundredths, as there), `words` as shown.
View figure_view(std::string_view json, double value, std::string_view words);

/// The same for a value that the JSON does not round.
View exact_figure_view(std::string_view json, double value, std::string_view words);

/// For page_band: the hours between which a time falls on eight days out of ten; nothing if that is
/// not known. `json` points to the band.
std::vector<View> band_views(const std::string& json, const std::optional<TimeBand>& band,
                             const Job& job);

/// Markup of a time and of a figure.
std::string page_time(std::string_view json, const std::optional<UtcTime>& time, const Job& job);
std::string page_figure(std::string_view json, double value, std::string_view words);

}  // namespace slabtide
