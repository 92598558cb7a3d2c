#include "posix_rule.h"

#include <algorithm>
#include <array>
#include <tuple>

#include <boost/date_time/gregorian/gregorian_types.hpp>

#include "text.h"

namespace slabtide {
namespace {

namespace greg = boost::gregorian;

constexpr std::int64_t second_s = 1;
constexpr std::int64_t minute_s = 60;
constexpr std::int64_t hour_s = 3600;
constexpr std::int64_t day_s = 86400;
constexpr int max_offset_hours = 24;
constexpr int max_rule_hours = 167;
constexpr std::size_t min_name_letters = 3;
constexpr int february_28 = 59;  // its number in a common year

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_quoted_name_char(char c) { return is_letter(c) || is_digit(c) || c == '+' || c == '-'; }

/// Reads the rule from left to right; each step returns false if the text does not fit.
class Reader {
 public:
  explicit Reader(std::string_view text) : rest_(text) {}

  [[nodiscard]] bool at_end() const { return rest_.empty(); }
  [[nodiscard]] bool at(char c) const { return rest_.starts_with(c); }

  bool take(char c) {
    const bool found = at(c);
    rest_.remove_prefix(found ? 1 : 0);
    return found;
  }

  bool name(std::string& name) {
    const bool in_brackets = take('<');
    const auto end =
        std::find_if_not(rest_.begin(), rest_.end(), in_brackets ? is_quoted_name_char : is_letter);
    const auto letters = static_cast<std::size_t>(end - rest_.begin());
    name = rest_.substr(0, letters);
    rest_.remove_prefix(letters);
    return letters >= min_name_letters && (!in_brackets || take('>'));
  }

  bool number(int min, int max, int& value) {
    if (rest_.empty() || !is_digit(rest_.front())) {
      return false;
    }
    value = 0;
    for (; !rest_.empty() && is_digit(rest_.front()); rest_.remove_prefix(1)) {
      value = value * 10 + (rest_.front() - '0');
      if (value > max) {
        return false;
      }
    }
    return value >= min;
  }

  /// [+-]h[:mm[:ss]]
  bool time(int max_hours, std::int64_t& seconds) {
    const bool negative = take('-');
    if (!negative) {
      take('+');
    }
    int hours = 0;
    if (!number(0, max_hours, hours)) {
      return false;
    }
    seconds = hours * hour_s;
    for (const std::int64_t unit : {minute_s, second_s}) {
      int value = 0;
      if (take(':')) {
        if (!number(0, 59, value)) {
          return false;
        }
      } else {
        break;
      }
      seconds += value * unit;
    }
    seconds = negative ? -seconds : seconds;
    return true;
  }

  /// Mm.w.d, Jn or n, then perhaps /time
  bool day(RuleDay& day) {
    bool fits = false;
    if (take('M')) {
      day.kind = RuleDay::Kind::nth_weekday;
      fits = number(1, 12, day.month) && take('.') && number(1, 5, day.week) && take('.') &&
             number(0, 6, day.weekday);
    } else if (take('J')) {
      day.kind = RuleDay::Kind::day_no_leap;
      fits = number(1, 365, day.day);
    } else {
      day.kind = RuleDay::Kind::day_with_leap;
      fits = number(0, 365, day.day);
    }
    return fits && (!take('/') || time(max_rule_hours, day.time_s));
  }

 private:
  std::string_view rest_;
};

bool read_offset(Reader& reader, std::int64_t& offset_s) {
  if (!reader.time(max_offset_hours, offset_s)) {
    return false;
  }
  offset_s = -offset_s;  // POSIX counts hours west of Greenwich
  return true;
}

std::string read_daylight(Reader& reader, std::int64_t standard_offset_s, DaylightTime& daylight) {
  if (!reader.name(daylight.name)) {
    return "the name of daylight time is not three letters or more";
  }
  daylight.offset_s = standard_offset_s + hour_s;
  if (!reader.at(',') && !reader.at_end() && !read_offset(reader, daylight.offset_s)) {
    return "the offset of daylight time is not hours from UTC";
  }
  if (!reader.take(',')) {
    return "it does not say when daylight time begins";
  }
  if (!reader.day(daylight.begins)) {
    return "the day daylight time begins is not a day of the year";
  }
  if (!reader.take(',') || !reader.day(daylight.ends)) {
    return "the day daylight time ends is not a day of the year";
  }
  return {};
}

std::string read_rule(std::string_view text, PosixRule& rule) {
  Reader reader(text);
  if (!reader.name(rule.standard_name)) {
    return "the zone's short name is not three letters or more";
  }
  if (!read_offset(reader, rule.standard_offset_s)) {
    return "the offset is not hours from UTC";
  }
  if (reader.at_end()) {
    return {};
  }
  std::string problem = read_daylight(reader, rule.standard_offset_s, rule.daylight.emplace());
  if (problem.empty() && !reader.at_end()) {
    problem = "something follows the end of the rule";
  }
  return problem;
}

greg::date date_in(const RuleDay& day, int year) {
  const auto y = static_cast<unsigned short>(year);
  switch (day.kind) {
    case RuleDay::Kind::nth_weekday: {
      using Nth = greg::nth_kday_of_month;  // Boost's fifth is the last
      return Nth(static_cast<Nth::week_num>(day.week), static_cast<unsigned short>(day.weekday),
                 static_cast<unsigned short>(day.month))
          .get_date(y);
    }
    case RuleDay::Kind::day_no_leap: {
      const bool after_leap_day =
          greg::gregorian_calendar::is_leap_year(y) && day.day > february_28;
      return greg::date(y, 1, 1) + greg::days(day.day - (after_leap_day ? 0 : 1));
    }
    case RuleDay::Kind::day_with_leap:
      break;
  }
  return greg::date(y, 1, 1) + greg::days(day.day);
}

/// The instant of a change: when the clock shows `time_s` of that day under `offset_before_s`.
std::int64_t instant_of(const RuleDay& day, int year, std::int64_t offset_before_s) {
  static const greg::date epoch(1970, 1, 1);
  return (date_in(day, year) - epoch).days() * day_s + day.time_s - offset_before_s;
}

int year_of(std::int64_t utc_s) {
  // One year inside Boost's range at both ends (1401 to 9998), so that the neighbouring years
  // exist; in days from 1970-01-01.
  static const greg::date epoch(1970, 1, 1);
  static const greg::years one(1);
  static const std::int64_t first = (greg::date(greg::min_date_time) + one - epoch).days();
  static const std::int64_t last = (greg::date(greg::max_date_time) - one - epoch).days();
  const std::int64_t day = utc_s / day_s - (utc_s % day_s < 0 ? 1 : 0);
  if (day < first || day > last) {
    return 0;
  }
  return (epoch + greg::days(static_cast<long>(day))).year();
}

struct Change {
  std::int64_t at_s;
  bool begins;
};

}  // namespace

ParsedPosixRule parse_posix_rule(std::string_view text) {
  PosixRule rule;
  std::string problem = read_rule(text, rule);
  if (!problem.empty()) {
    return {std::nullopt, std::move(problem)};
  }
  return {rule, {}};
}

namespace {

bool is_daylight(const PosixRule& rule, std::int64_t utc_s) {
  const int year = rule.daylight ? year_of(utc_s) : 0;
  if (year == 0) {
    return false;
  }
  // A rule's times may lie up to a week from its day, so the latest change may belong to a
  // neighbouring year.
  std::array<Change, 6> changes{};
  std::size_t n = 0;
  for (const int y : {year - 1, year, year + 1}) {
    changes.at(n++) = {instant_of(rule.daylight->begins, y, rule.standard_offset_s), true};
    changes.at(n++) = {instant_of(rule.daylight->ends, y, rule.daylight->offset_s), false};
  }
  // If one period ends as the next begins, daylight time lasts all year (RFC 8536, 3.3.1).
  std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) {
    return std::tie(a.at_s, a.begins) < std::tie(b.at_s, b.begins);
  });
  bool daylight = false;
  for (const Change& change : changes) {
    daylight = change.at_s <= utc_s ? change.begins : daylight;
  }
  return daylight;
}

}  // namespace

std::int64_t posix_offset_s(const PosixRule& rule, std::int64_t utc_s) {
  return is_daylight(rule, utc_s) ? rule.daylight->offset_s : rule.standard_offset_s;
}

const std::string& posix_name(const PosixRule& rule, std::int64_t utc_s) {
  return is_daylight(rule, utc_s) ? rule.daylight->name : rule.standard_name;
}

}  // namespace slabtide
