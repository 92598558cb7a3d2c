#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/civil_time.h"
#include "table_reader.h"

namespace slabtide {

/// What gives a time without a date its meaning. Where the date is not known, which has been
/// reported, no time is read.
struct PourDay {
  Date date;
  TimeZone zone;
};

/// A date as YYYY-MM-DD, of pour_years; else empty.
std::optional<Date> parse_pour_date(std::string_view text);
/// What it must be, for messages.
std::string expected_pour_date();

std::optional<Date> read_date(TableReader& table, std::string_view key, Presence presence);

/// A local time: "08:00" of the pour's date, or a date and time, which may carry an offset. A
/// time the clocks skip is an error; one that comes twice is the first, with a warning.
std::optional<UtcTime> read_time(TableReader& table, std::string_view key, const PourDay& day,
                                 Presence presence = Presence::optional);

/// The same, where a time without a date that is not after `earlier` is one of the next day.
std::optional<UtcTime> read_time_after(TableReader& table, std::string_view key, const PourDay& day,
                                       UtcTime earlier);

}  // namespace slabtide
