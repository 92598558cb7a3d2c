#include "journal_line.h"

#include <cmath>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>

#include "core/text.h"
#include "core/utf8.h"
#include "job/toml/quantity.h"
#include "journal_words.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

const Quantity& quantity_of(ObservationMeasure measure) {
  if (measure == ObservationMeasure::temperature) return temperature_quantity;
  if (measure == ObservationMeasure::wind) return wind_quantity;
  return fraction_quantity;
}

std::string value_text(const Observation& reading, UnitSystem units) {
  if (!reading.value) return {};
  const Unit& unit = quantity_of(observation_measure(reading.kind)).usual(units);
  constexpr double tenths = 10.0;
  const double in_unit = std::round(unit.from_si(*reading.value) * tenths) / tenths;
  return fmt::format(" {:g} {}", in_unit, unit.shown);
}

std::string time_text(UtcTime at, const TimeZone& zone) {
  const LocalTime local = zone.local_from_utc(to_minute(at));
  if (zone.utc_from_local(local).kind != LocalTimeKind::ordinary) return iso8601_minute(at, zone);
  return fmt::format("{} {}", boost::gregorian::to_iso_extended_string(local.date()),
                     clock_time(at, zone));
}

}  // namespace

std::string journal_line(const Observation& reading, const Job& job) {
  std::string line = fmt::format("{}  {}{}", time_text(reading.at, job.site.time_zone),
                                 observation_id(reading.kind), value_text(reading, job.units));
  if (!reading.zone.empty()) line += fmt::format("  {}", journal_word(reading.zone));
  if (!reading.part.empty()) {
    line += fmt::format(" {}", journal_word(noted_part_text({reading.part, reading.part_id})));
  }
  return line + "\n";
}

std::string typed_line(const TypedObservation& typed, const Job& job) {
  std::string line = fmt::format("{} {}", journal_word(typed.at), journal_word(typed.reading));
  for (const std::string& word : typed.value) line += fmt::format(" {}", journal_word(word));
  const auto kind = observation_from_id(typed.reading);
  const bool bare = typed.value.size() == 1 && parse_number(typed.value[0]).has_value();
  if (kind && bare) {
    line += fmt::format(" {}", quantity_of(observation_measure(*kind)).usual(job.units).shown);
  }
  if (!typed.zone.empty()) line += fmt::format(" {}", journal_word(typed.zone));
  if (!typed.part.empty()) line += fmt::format(" {}", journal_word(typed.part));
  return line + "\n";
}

std::string journal_heading(const Job& job) {
  return fmt::format(
      "# What was seen: {}\n"
      "# One reading a line: day, hour, what, its value, where. Lines may be fixed by hand;\n"
      "# slabtide note --list shows the words.\n",
      printable(job.name));
}

std::string observation_sentence(const Observation& reading, const Job& job) {
  std::string place = printable(reading.zone);
  if (!reading.part.empty()) place += fmt::format(", {}", printable(reading.part));
  return fmt::format("{}  {}{}{}{}", clock_of(job).date_time(reading.at), place,
                     place.empty() ? "" : ": ", observation_words(reading.kind),
                     value_text(reading, job.units));
}

}  // namespace slabtide
