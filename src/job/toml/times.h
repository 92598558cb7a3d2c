#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/typed_date.h"
#include "slabtide/core/clock.h"
#include "table_reader.h"

namespace slabtide {

/// What is needed to interpret a time without a date. If the date is not known, which has then been
/// reported, no time is read.
struct PourDay {
  Date date;
  Clock clock;
};

/// A date as `parse_typed_date` takes it, within limits::years; neither date nor fault for any
/// other text.
TypedDate parse_pour_date(std::string_view text, const DayWords& words);
/// The dates that are accepted, for messages.
std::string expected_pour_date();

/// A date as a file may give it: one that says its year, since a file is read on other days too.
std::optional<Date> read_date(TableReader& table, std::string_view key, Presence presence);

/// A local time: "08:00" or "8:00 AM" on the pour's date, or a date and time, which may have an
/// offset. A time that the clocks skip is an error; for one that occurs twice the first is taken,
/// with a warning.
std::optional<UtcTime> read_time(TableReader& table, std::string_view key, const PourDay& day,
                                 Presence presence = Presence::optional);

/// The same, but a time without a date that is not after `earlier` is taken on the next day.
std::optional<UtcTime> read_time_after(TableReader& table, std::string_view key, const PourDay& day,
                                       UtcTime earlier);

/// A time of the clock alone, "07:30" or "7:30 AM", in minutes of the day.
std::optional<int> read_time_of_day(TableReader& table, std::string_view key);

}  // namespace slabtide
