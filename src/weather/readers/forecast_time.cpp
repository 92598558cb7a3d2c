#include "forecast_time.h"

#include <fmt/format.h>

namespace slabtide {
namespace {

constexpr int first_year = 1970;  // unix time counts from its start
constexpr int last_year = 2199;
/// Longer than any clock change and shorter than the time between two changes.
const Duration past_the_change = boost::posix_time::hours(24);

bool is_forecast_date(Date date) { return date.year() >= first_year && date.year() <= last_year; }

/// The later of the two instants of a repeated local time.
UtcTime second_of_two(UtcTime first, const TimeZone& zone) {
  return first + (zone.offset_at(first) - zone.offset_at(first + past_the_change));
}

/// Replaces a space between date and clock, as spreadsheets write it, by the T of ISO 8601.
std::string with_t(std::string_view text) {
  constexpr std::size_t date_length = 10;
  std::string iso{text};
  if (iso.size() > date_length && iso[date_length] == ' ') iso[date_length] = 'T';
  return iso;
}

}  // namespace

bool is_forecast_time(UtcTime time) { return !time.is_special() && is_forecast_date(time.date()); }

std::optional<UtcTime> instant_with_offset(std::string_view text) {
  const std::optional<ParsedInstant> parsed = parse_instant(text);
  if (!parsed || !parsed->offset || !is_forecast_date(parsed->local.date())) return std::nullopt;
  return parsed->local - *parsed->offset;
}

std::optional<UtcTime> instant_from_unix(double seconds) {
  const UtcTime epoch{Date(first_year, 1, 1)};
  const double end_s = seconds_between(epoch, UtcTime{Date(last_year + 1, 1, 1)});
  if (!(seconds >= 0.0 && seconds < end_s)) return std::nullopt;
  return after_seconds(epoch, seconds);
}

ForecastInstant ForecastClock::read(std::string_view text) {
  const std::optional<ParsedInstant> parsed = parse_instant(with_t(text));
  if (!parsed) return {std::nullopt, "is not a time such as 2026-05-14T08:00"};
  if (!is_forecast_date(parsed->local.date()))
    return {std::nullopt, fmt::format("is not within the years {} to {}", first_year, last_year)};
  ForecastInstant instant = parsed->offset ? ForecastInstant{parsed->local - *parsed->offset, ""}
                                           : from_local(parsed->local);
  if (instant.utc) before_ = instant.utc;
  return instant;
}

ForecastInstant ForecastClock::from_local(LocalTime local) const {
  const ResolvedLocalTime resolved = zone_.utc_from_local(local);
  if (resolved.kind == LocalTimeKind::skipped) {
    return {std::nullopt,
            fmt::format("does not exist in {}: the clocks go forward over it", zone_.name())};
  }
  const bool already_past = before_ && *before_ >= resolved.utc;
  if (resolved.kind == LocalTimeKind::repeated && already_past)
    return {second_of_two(resolved.utc, zone_), ""};
  return {resolved.utc, ""};
}

}  // namespace slabtide
