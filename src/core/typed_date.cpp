#include "typed_date.h"

#include <array>
#include <stdexcept>
#include <vector>

#include <fmt/format.h>

#include "slabtide/core/clock.h"
#include "text.h"

namespace slabtide {
namespace {

namespace gr = boost::gregorian;

constexpr std::array<std::string_view, 7> weekdays{"sunday",   "monday", "tuesday", "wednesday",
                                                   "thursday", "friday", "saturday"};
constexpr std::array<std::string_view, 12> months{"january",   "february", "march",    "april",
                                                  "may",       "june",     "july",     "august",
                                                  "september", "october",  "november", "december"};
constexpr std::size_t fewest_letters = 3;

/// What the words of a day have told so far.
struct DayParts {
  std::optional<int> weekday;  ///< Sunday is 0
  std::optional<int> year;
  std::optional<int> month;
  std::optional<int> day;
};

/// The words between spaces and commas, in lower case.
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    if (c == ' ' || c == ',' || c == '\t') {
      if (!words.back().empty()) words.emplace_back();
    } else {
      words.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

/// Which of the names the word shortens, to three letters or more; "sept." is one of them.
template <std::size_t N>
std::optional<int> named(std::string_view word, const std::array<std::string_view, N>& names) {
  if (word.ends_with('.')) word.remove_suffix(1);
  if (word.size() < fewest_letters) return std::nullopt;
  for (std::size_t i = 0; i < N; ++i) {
    if (names[i].starts_with(word)) return static_cast<int>(i);
  }
  return std::nullopt;
}

/// A number of one to four digits.
std::optional<int> count_of(std::string_view digits) {
  constexpr std::size_t most_digits = 4;
  if (digits.empty() || digits.size() > most_digits) return std::nullopt;
  int value = 0;
  for (const char c : digits) {
    if (!is_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

/// "14", "14th".
std::optional<int> day_number(std::string_view word) {
  for (const std::string_view ending : {"st", "nd", "rd", "th"}) {
    if (word.ends_with(ending)) word.remove_suffix(ending.size());
  }
  return word.size() > 2 ? std::nullopt : count_of(word);
}

/// Numbers apart by `mark`: 8/3/2026. Empty if there is anything else.
std::vector<int> numbers_of(std::string_view word, char mark) {
  std::vector<int> numbers;
  for (;;) {
    const std::size_t end = std::min(word.find(mark), word.size());
    const auto number = count_of(word.substr(0, end));
    if (!number) return {};
    numbers.push_back(*number);
    if (end == word.size()) return numbers;
    word.remove_prefix(end + 1);
  }
}

constexpr int century = 2000;
int full_year(int year) { return year < 100 ? century + year : year; }

bool take_slashes(std::string_view word, DayParts& parts) {
  std::vector<int> numbers = numbers_of(word, '/');
  if (numbers.size() < 2) numbers = numbers_of(word, '-');
  if (numbers.size() < 2 || numbers.size() > 3 || parts.month || parts.day) return false;
  parts.month = numbers[0];
  parts.day = numbers[1];
  if (numbers.size() == 3) parts.year = full_year(numbers[2]);
  return true;
}

/// "2026-8-3", which wants no leading zeros.
bool take_iso(std::string_view word, DayParts& parts) {
  constexpr std::size_t year_digits = 4;
  const std::vector<int> numbers = numbers_of(word, '-');
  if (numbers.size() != 3 || word.find('-') != year_digits || parts.month || parts.day)
    return false;
  parts.year = numbers[0];
  parts.month = numbers[1];
  parts.day = numbers[2];
  return true;
}

bool set_once(std::optional<int>& part, std::optional<int> value) {
  if (!value || part) return false;
  part = value;
  return true;
}

bool take_word(std::string_view word, bool month_first, DayParts& parts) {
  if (take_iso(word, parts)) return true;
  if (month_first && take_slashes(word, parts)) return true;
  if (set_once(parts.weekday, named(word, weekdays))) return true;
  const auto month = named(word, months);
  if (month && set_once(parts.month, *month + 1)) return true;
  if (set_once(parts.day, day_number(word))) return true;
  constexpr std::size_t year_digits = 4;
  return word.size() == year_digits && set_once(parts.year, count_of(word));
}

std::optional<Date> date_of(int year, int month, int day) {
  if (year < min_year || year > max_year) return std::nullopt;
  try {
    return Date(static_cast<unsigned short>(year), static_cast<unsigned short>(month),
                static_cast<unsigned short>(day));
  } catch (const std::out_of_range&) {  // Boost reports a day that does not exist this way
    return std::nullopt;
  }
}

/// The first day from `today` on that has this month and day.
std::optional<Date> next_date(Date today, int month, int day) {
  constexpr int years_to_a_leap_day = 8;
  for (int year = today.year(); year <= today.year() + years_to_a_leap_day; ++year) {
    const auto date = date_of(year, month, day);
    if (date && *date >= today) return date;
  }
  return std::nullopt;
}

Date next_weekday(Date today, int weekday) {
  constexpr int days = 7;
  return today + gr::days((weekday - today.day_of_week().as_number() + days) % days);
}

std::string capital(std::string_view name) {
  std::string word(name);
  word.front() = static_cast<char>(word.front() - 'a' + 'A');
  return word;
}

TypedDate no_today(std::string_view text) {
  return {std::nullopt,
          fmt::format("\"{}\" is another day next week: write the date with its year", text)};
}

/// Which of the weekdays to come is meant.
enum class Week { first, next };

/// Takes the word before a weekday off: "this Fri", "on Friday", "next Friday".
Week take_week(std::vector<std::string>& said) {
  if (said.size() != 2 || !named(said.back(), weekdays)) return Week::first;
  const bool next = said.front() == "next";
  if (next || said.front() == "this" || said.front() == "coming" || said.front() == "on") {
    said.erase(said.begin());
  }
  return next ? Week::next : Week::first;
}

/// The weekday alone. On a Wednesday some say "next Friday" of the day after tomorrow and some of
/// the Friday after it, so neither is guessed; on a Friday both mean the same.
TypedDate told_weekday(std::string_view text, int weekday, const DayWords& words, Week week) {
  constexpr int days = 7;
  const Date first = next_weekday(*words.today, weekday);
  if (week == Week::first) return {first, {}};
  const Date second = first + gr::days(days);
  if (first == *words.today) return {second, {}};
  const ClockStyle style{HourCount::twelve, words.month_first};
  return {std::nullopt, fmt::format("\"{}\" may be {} or {}: write which", text,
                                    shown_day(first, style), shown_day(second, style))};
}

TypedDate dated(const DayParts& parts, std::string_view text, const DayWords& words) {
  if (!parts.year && !words.today) {
    return {std::nullopt, fmt::format("\"{}\" has no year: write it too", text)};
  }
  const auto date = parts.year ? date_of(*parts.year, *parts.month, *parts.day)
                               : next_date(*words.today, *parts.month, *parts.day);
  if (!date && parts.year && (*parts.year < min_year || *parts.year > max_year)) return {};
  if (!date) {
    const bool slashes = text.find('/') != std::string_view::npos;
    return {std::nullopt,
            fmt::format("there is no {}{}", text, slashes ? " (month, day, year)" : "")};
  }
  const int weekday = date->day_of_week().as_number();
  if (!parts.weekday || weekday == *parts.weekday) return {date, {}};
  return {std::nullopt, fmt::format("{} is a {}, not a {}",
                                    shown_date(*date, {HourCount::twelve, true}).substr(5),
                                    capital(weekdays[static_cast<std::size_t>(weekday)]),
                                    capital(weekdays[static_cast<std::size_t>(*parts.weekday)]))};
}

}  // namespace

TypedDate parse_typed_date(std::string_view text, const DayWords& words) {
  if (const auto iso = parse_date(text)) return {iso, {}};
  std::vector<std::string> said = words_of(text);
  if (said.empty()) return {};
  const bool is_today = said.front() == "today";
  if (said.size() == 1 && (is_today || said.front() == "tomorrow")) {
    if (!words.today) return no_today(text);
    return {*words.today + gr::days(is_today ? 0 : 1), {}};
  }
  const Week week = take_week(said);
  DayParts parts;
  for (const std::string& word : said) {
    if (!take_word(word, words.month_first, parts)) return {};
  }
  if (parts.month && parts.day) return dated(parts, text, words);
  if (!parts.weekday || parts.month || parts.day || parts.year) return {};
  if (!words.today) return no_today(text);
  return told_weekday(text, *parts.weekday, words, week);
}

std::optional<ParsedInstant> parse_typed_instant(std::string_view text, const DayWords& words) {
  if (auto instant = parse_typed_instant(text)) return instant;
  if (parse_typed_date(text, words).date) return std::nullopt;  // the 2026 of "Aug 3 2026"
  for (std::size_t at = text.find(' '); at != std::string_view::npos; at = text.find(' ', at + 1)) {
    const auto clock = parse_clock(text.substr(at + 1));
    std::string_view said = text.substr(0, at);
    if (said.ends_with(" at")) said.remove_suffix(std::string_view(" at").size());
    const TypedDate day = parse_typed_date(said, words);
    if (clock && day.date) return ParsedInstant{LocalTime(*day.date, *clock), std::nullopt};
  }
  return std::nullopt;
}

}  // namespace slabtide
