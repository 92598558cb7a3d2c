#include "read_journal.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <span>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"
#include "job/toml/quantity.h"
#include "job/toml/quantity_words.h"
#include "journal_words.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

constexpr std::size_t max_faulty_lines = 50;

// Limits of the values (our choice): beyond these it is a mistake.
constexpr Range concrete_c{0.0, 50.0};
constexpr Range surfaces_c{-20.0, 90.0};
constexpr Range airs_c{-40.0, 55.0};
constexpr Range winds_m_s{0.0, 30.0};
constexpr Range humidities{0.01, 1.0};
/// How long after the planned start something may be observed: the days that are computed, and a
/// week for sawing and cracks.
constexpr double last_observation_h = 48.0;
constexpr double last_crack_h = 168.0;

Range range_of(ObservationKind kind) {
  switch (kind) {
    case ObservationKind::concrete_temperature:
      return concrete_c;
    case ObservationKind::surface_temperature:
      return surfaces_c;
    case ObservationKind::air_temperature:
      return airs_c;
    case ObservationKind::wind:
      return winds_m_s;
    default:
      return humidities;
  }
}

const Quantity& units_kind(ObservationMeasure measure) {
  static const Quantity humidity{fraction_quantity.units.first(1)};
  if (measure == ObservationMeasure::temperature) return temperature_quantity;
  if (measure == ObservationMeasure::wind) return wind_quantity;
  return humidity;
}

/// The units a measure may be written in; humidity only in percent.
std::span<const Unit> units_of(ObservationMeasure measure) { return units_kind(measure).units; }

std::string unit_names(std::span<const Unit> units) {
  std::string names;
  for (const Unit& unit : units) {
    if (!names.empty()) names += &unit == &units.back() ? " or " : ", ";
    names += unit.shown;
  }
  return names;
}

bool is_of_the_slab(ObservationKind kind) {
  return observation_measure(kind) == ObservationMeasure::nothing ? kind != ObservationKind::placed
                                                                  : observation_needs_zone(kind);
}

/// What no slab has within the hours that a pour may run ahead of its plan.
bool comes_after_setting(ObservationKind kind) {
  return kind == ObservationKind::sawed || kind == ObservationKind::crack;
}

double hours_after_start(UtcTime at, const Job& job) {
  return seconds_between(job.pour.start, at) / seconds_per_hour;
}

/// A line that counts unless it is faulty or undone.
struct Entry {
  Observation reading;
  std::vector<Diagnostic> findings;
  bool faulty = false;
};

/// Reads one line's words from the left.
class LineReader {
 public:
  LineReader(const JournalLine& line, const Job& job, SourcePosition end)
      : words_(line.words), job_(job), end_(end) {
    if (line.fault) {
      entry_.findings.push_back(*line.fault);
      entry_.faulty = true;
    }
  }

  Entry read() {
    entry_.reading.where = words_.empty() ? end_ : words_.front().where;
    static_cast<void>(!entry_.faulty && read_time() && read_kind() && read_value() && read_zone() &&
                      read_part() && check_span());
    return std::move(entry_);
  }

 private:
  bool more() const { return next_ < words_.size(); }
  SourcePosition here() const { return more() ? words_[next_].where : end_; }

  bool fail(SourcePosition where, std::string key, std::string message, std::string next_step) {
    entry_.findings.push_back({Severity::error, std::move(key), std::move(message), where,
                               std::nullopt, std::move(next_step)});
    entry_.faulty = true;
    return false;
  }

  bool read_time() {
    const JournalWord& first = words_[next_++];
    std::string text = with_half(first.text);
    if (const auto clock = parse_clock(text)) {
      clock_ = *clock;
      entry_.reading.at = clock_instant(*clock, job_);
      return true;
    }
    if (parse_date(text)) {
      if (!more()) return fail(end_, "time", "the hour is missing", "such as 11:05");
      const std::string clock = words_[next_++].text;
      text = fmt::format("{} {}", text, with_half(clock));
    }
    const auto instant = parse_typed_instant(text);
    if (!instant) {
      return fail(first.where, "time",
                  fmt::format("got '{}', expected the day and the hour", printable(text)),
                  "such as 2026-05-14 11:05, or 11:05 AM");
    }
    return take_instant(*instant, first.where);
  }

  /// The hour with the AM or PM that may stand behind it as a word of its own, which is then taken.
  std::string with_half(const std::string& hour) {
    if (!more() || !is_half_of_day(words_[next_].text)) return hour;
    return hour + " " + words_[next_++].text;
  }

  bool take_instant(const ParsedInstant& instant, SourcePosition where) {
    if (instant.offset) {
      entry_.reading.at = instant.local - *instant.offset;
      return true;
    }
    const auto resolved = job_.site.time_zone.utc_from_local(instant.local);
    entry_.reading.at = resolved.utc;
    if (resolved.kind == LocalTimeKind::skipped) {
      return fail(
          where, "time", "there is no such hour that night: the clocks go forward over it",
          fmt::format("{} is the same moment on the new clock", clock_of(job_).time(resolved.utc)));
    }
    if (resolved.kind == LocalTimeKind::repeated) {
      entry_.findings.push_back({Severity::warning, "time",
                                 "that hour comes twice, the first is taken", where, std::nullopt,
                                 fmt::format("say which with its offset, such as {}",
                                             iso8601_minute(resolved.utc, job_.site.time_zone))});
    }
    return true;
  }

  bool read_kind() {
    if (!more()) return fail(end_, "reading", "missing", "slabtide note --list names them");
    const JournalWord& word = words_[next_++];
    if (const auto kind = observation_from_id(word.text)) {
      entry_.reading.kind = *kind;
      if (clock_ && comes_after_setting(*kind)) {
        entry_.reading.at = clock_instant(*clock_, job_, 0.0);
      }
      return true;
    }
    std::vector<std::string_view> ids;
    for (std::size_t i = 0; i < observation_kind_count; ++i) {
      ids.push_back(observation_id(static_cast<ObservationKind>(i)));
    }
    const auto meant = nearest(word.text, ids);
    return fail(word.where, "reading",
                fmt::format("there is no reading '{}'", printable(word.text)),
                meant ? fmt::format("did you mean {}?", *meant)
                      : std::string("slabtide note --list names them"));
  }

  bool read_value() {
    const ObservationMeasure measure = observation_measure(entry_.reading.kind);
    if (measure == ObservationMeasure::nothing) return true;
    const auto units = units_of(measure);
    const std::string key(observation_id(entry_.reading.kind));
    if (!more()) return fail(end_, key, "its value is missing", value_example(units));
    const JournalWord& word = words_[next_++];
    const std::size_t digits =
        std::min(word.text.find_first_not_of("+-.0123456789"), word.text.size());
    const auto number = parse_number(std::string_view(word.text).substr(0, digits));
    if (!number) {
      return fail(word.where, key, fmt::format("got '{}', expected a number", printable(word.text)),
                  value_example(units));
    }
    std::string unit_text = word.text.substr(digits);
    SourcePosition unit_place = word.where;
    if (unit_text.empty() && more()) {
      unit_place = here();
      unit_text = words_[next_++].text;
    }
    // "80 degrees F", and "80 degrees" of the job's own.
    if (is_degrees(unit_text) && more() && unit_named(words_[next_].text, units_kind(measure))) {
      unit_text = words_[next_++].text;
    }
    const Unit* const unit = is_degrees(unit_text) && units_kind(measure).counts_degrees
                                 ? &units_kind(measure).usual(job_.units)
                                 : unit_named(unit_text, units_kind(measure));
    if (unit == nullptr) {
      return fail(
          unit_place, key,
          fmt::format("got the unit '{}', expected {}", printable(unit_text), unit_names(units)),
          value_example(units));
    }
    return take_value(*number, *unit, units, word.where);
  }

  std::string value_example(std::span<const Unit> units) const {
    if (units.size() == 1) return "such as 45 %";
    const Unit& usual = units[job_.units == UnitSystem::us ? 0 : 1];
    constexpr double example_c = 20.0;
    constexpr double example_m_s = 3.0;
    const bool warmth = observation_measure(entry_.reading.kind) == ObservationMeasure::temperature;
    return fmt::format("such as {:.0f} {}", usual.from_si(warmth ? example_c : example_m_s),
                       usual.shown);
  }

  bool take_value(double number, const Unit& unit, std::span<const Unit> units,
                  SourcePosition where) {
    const ObservationKind kind = entry_.reading.kind;
    const Range range = range_of(kind);
    if (range.holds(unit.to_si(number))) {
      entry_.reading.value = unit.to_si(number);
      return true;
    }
    std::string next_step = "look again at the instrument, and at the line";
    for (const Unit& other : units) {
      if (&other == &unit || !range.holds(other.to_si(number))) continue;
      next_step = fmt::format("if {} is meant, write that", shown(number, other));
    }
    return fail(where, std::string(observation_id(kind)),
                fmt::format("got {}, expected {}", shown(number, unit), shown(range, unit)),
                std::move(next_step));
  }

  bool read_zone() {
    const ObservationKind kind = entry_.reading.kind;
    if (!more()) {
      if (!observation_needs_zone(kind)) return true;
      return fail(end_, "zone", fmt::format("missing: where was it? ({})", observation_words(kind)),
                  zone_names());
    }
    const JournalWord& word = words_[next_++];
    entry_.reading.zone = word.text;
    std::vector<std::string_view> names;
    for (const Zone& zone : job_.zones) names.emplace_back(zone.name);
    if (std::find(names.begin(), names.end(), word.text) != names.end()) return true;
    const auto meant = nearest(word.text, names);
    return fail(word.where, "zone", fmt::format("there is no zone '{}'", printable(word.text)),
                meant ? fmt::format("did you mean {}?", journal_word(*meant)) : zone_names());
  }

  std::string zone_names() const {
    std::string names = "the zones are ";
    for (const Zone& zone : job_.zones) {
      names +=
          fmt::format("{}{}", &zone == &job_.zones.front() ? "" : ", ", journal_word(zone.name));
    }
    return names;
  }

  bool read_part() {
    if (more()) {
      NotedPart part = parse_noted_part(words_[next_++].text);
      entry_.reading.part = std::move(part.name);
      entry_.reading.part_id = std::move(part.id);
    }
    if (!more()) return true;
    return fail(here(), "part",
                fmt::format("'{}' is one word too many", printable(words_[next_].text)),
                "put a name with a space in quotation marks; a comment begins with #");
  }

  bool check_span() {
    const Observation& reading = entry_.reading;
    const double hours = hours_after_start(reading.at, job_);
    const double last_h = comes_after_setting(reading.kind) ? last_crack_h : last_observation_h;
    if (hours >= -early_start_h && hours <= last_h) return true;
    return fail(
        reading.where, "time",
        fmt::format("{} is {:.0f} h {} the pour starts ({})", clock_of(job_).date_time(reading.at),
                    std::abs(hours), hours < 0.0 ? "before" : "after",
                    clock_of(job_).date_time(job_.pour.start)),
        "look at the day and the hour, and at the job's own date");
  }

  const std::vector<JournalWord>& words_;
  const Job& job_;
  SourcePosition end_;
  std::size_t next_ = 0;
  std::optional<Duration> clock_;  ///< a time that was given without its day
  Entry entry_;
};

class JournalReader {
 public:
  explicit JournalReader(const Job& job) : job_(job) {}

  void read(std::string_view text) {
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    for (std::size_t number = 1; !text.empty() && faulty_ < max_faulty_lines; ++number) {
      const std::size_t end = text.find('\n');
      if (end == std::string_view::npos) return warn_of_unfinished(text, number);
      std::string_view line = text.substr(0, end);
      text.remove_prefix(end + 1);
      if (line.ends_with('\r')) line.remove_suffix(1);
      if (!line.ends_with(unfinished_mark)) take_line(line, number);
    }
  }

  Parsed<Journal> result() {
    for (const Entry& entry : entries_) {
      const bool counts = !entry.faulty && entry.reading.kind == ObservationKind::placed;
      if (counts) placed_.try_emplace(entry.reading.zone, entry.reading);
    }
    for (Entry& entry : entries_) check_among_others(entry);
    Journal journal;
    for (Entry& entry : entries_) {
      std::move(entry.findings.begin(), entry.findings.end(), std::back_inserter(findings_));
      journal.readings.push_back(std::move(entry.reading));
    }
    if (has_error(findings_)) return {std::nullopt, std::move(findings_)};
    return {std::move(journal), std::move(findings_)};
  }

 private:
  void warn_of_unfinished(std::string_view line, std::size_t number) {
    if (line.find_first_not_of(" \t\r") == std::string_view::npos) return;
    findings_.push_back({Severity::warning,
                         {},
                         "the last line has no end: it was cut short, and is not counted",
                         SourcePosition{number, 1},
                         std::nullopt,
                         "note it again; or, if it is complete, end it with a line break"});
  }

  void take_line(std::string_view line, std::size_t number) {
    const JournalLine cut = cut_journal_line(line, number);
    if (cut.words.empty()) return;
    const SourcePosition end{number, characters(line) + 1};
    if (!cut.fault && cut.words.front().text == undo_word) return undo(cut.words);
    entries_.push_back(LineReader(cut, job_, end).read());
    if (entries_.back().faulty) ++faulty_;
  }

  static std::size_t characters(std::string_view line) {
    std::size_t count = 0;
    for (; !line.empty(); ++count) line.remove_prefix(first_utf8(line).bytes);
    return count;
  }

  void undo(const std::vector<JournalWord>& words) {
    if (words.size() > 1) {
      return fail(words[1].where, "nothing follows an undo", "it strikes the last line before it");
    }
    if (entries_.empty()) {
      return fail(words.front().where, "there is nothing before it to undo", "take the line out");
    }
    if (entries_.back().faulty) --faulty_;
    entries_.pop_back();
  }

  void fail(SourcePosition where, std::string message, std::string next_step) {
    findings_.push_back({Severity::error, std::string(undo_word), std::move(message), where,
                         std::nullopt, std::move(next_step)});
    ++faulty_;
  }

  /// Checks the entry against the others noted.
  void check_among_others(Entry& entry) const {
    if (entry.faulty) return;
    const auto found = placed_.find(entry.reading.zone);
    const Observation* const placed = found == placed_.end() ? nullptr : &found->second;
    if (is_of_the_slab(entry.reading.kind)) check_after_placing(entry, placed);
    if (entry.reading.kind != ObservationKind::placed || placed == nullptr) return;
    if (placed->where == entry.reading.where) return;
    entry.findings.push_back(
        {Severity::error, "placed",
         fmt::format("it was already noted as placed at {}", clock_of(job_).time(placed->at)),
         entry.reading.where, placed->where,
         "leave the one that is right; slabtide note JOB --undo strikes the "
         "last line"});
  }

  void check_after_placing(Entry& entry, const Observation* placed) const {
    const UtcTime from = placed != nullptr ? placed->at : job_.pour.start;
    if (entry.reading.at > from) return;
    const std::string clock = clock_of(job_).time(from);
    const bool noted = placed != nullptr;
    entry.findings.push_back(
        {Severity::error, "time",
         fmt::format("there was no concrete yet: {} {}",
                     noted ? "the zone was placed at" : "the pour starts at", clock),
         entry.reading.where, noted ? std::optional(placed->where) : std::nullopt,
         noted ? std::string("look at both hours")
               : std::string("if it started earlier, note first when the zone was placed")});
  }

  const Job& job_;
  std::vector<Entry> entries_;
  std::map<std::string, Observation> placed_;  ///< the first of each zone
  std::vector<Diagnostic> findings_;
  std::size_t faulty_ = 0;
};

}  // namespace

UtcTime clock_instant(Duration clock, const Job& job, double earliest_h) {
  const TimeZone& zone = job.site.time_zone;
  const UtcTime earliest = after_seconds(job.pour.start, earliest_h * seconds_per_hour);
  const UtcTime own_day = zone.utc_from_local(LocalTime(job.pour.date, clock)).utc;
  if (own_day >= earliest) return own_day;
  return zone.utc_from_local(LocalTime(job.pour.date + boost::gregorian::days(1), clock)).utc;
}

Parsed<Journal> read_journal(std::string_view text, const Job& job) {
  JournalReader reader(job);
  reader.read(text);
  return reader.result();
}

}  // namespace slabtide
