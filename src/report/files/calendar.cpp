#include "calendar.h"

#include <algorithm>
#include <charconv>
#include <limits>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "ical_text.h"
#include "report/words/validate_facts.h"

namespace slabtide {

namespace {

using Lines = std::vector<std::string>;

constexpr std::string_view event_begins = "BEGIN:VEVENT";
constexpr std::string_view event_ends = "END:VEVENT";
constexpr std::string_view alarm_begins = "BEGIN:VALARM";
constexpr std::string_view alarm_ends = "END:VALARM";
constexpr std::string_view confirmed = "STATUS:CONFIRMED";
constexpr std::string_view cancelled = "STATUS:CANCELLED";
/// RFC 5545, section 3.3.8: an INTEGER has 32 bits.
constexpr long max_sequence = std::numeric_limits<std::int32_t>::max();

/// An event in a file: its identifier, its revision, and all other lines.
struct Entry {
  std::string uid;
  long sequence = 0;
  std::string stamp;
  Lines body;
};

std::string text_line(std::string_view property, std::string_view text) {
  return fmt::format("{}:{}", property, ical_escaped(text));
}

Lines alarm(const std::string& trigger, std::string_view says) {
  return {std::string(alarm_begins), "ACTION:DISPLAY", trigger, text_line("DESCRIPTION", says),
          std::string(alarm_ends)};
}

void append(Lines& lines, const Lines& more) {
  lines.insert(lines.end(), more.begin(), more.end());
}

Lines body_of(const CalendarEvent& event, const Site& site, std::string_view calendar_uid) {
  Lines body{fmt::format("DTSTART:{}", ical_utc(event.starts))};
  if (event.ends) body.push_back(fmt::format("DTEND:{}", ical_utc(*event.ends)));
  body.push_back(text_line("SUMMARY", event.summary));
  if (!event.description.empty()) body.push_back(text_line("DESCRIPTION", event.description));
  if (!site.name.empty()) body.push_back(text_line("LOCATION", site.name));
  body.push_back(fmt::format("GEO:{:.5f};{:.5f}", site.latitude_deg, site.longitude_deg));
  body.push_back(text_line("CATEGORIES", event.category));
  body.emplace_back(confirmed);
  body.push_back(fmt::format("ORGANIZER;CN=Slabtide:urn:uuid:{}", calendar_uid));
  append(body, alarm(fmt::format("TRIGGER:-PT{}M", event.alarm_before_min), event.summary));
  if (event.last_call_min && event.ends) {
    append(body, alarm(fmt::format("TRIGGER;RELATED=END:-PT{}M", *event.last_call_min),
                       fmt::format("last call, {}", event.summary)));
  }
  return body;
}

/// The value after "NAME:" if the line is of that property.
std::optional<std::string_view> value_of(std::string_view line, std::string_view name) {
  if (!line.starts_with(name) || line.substr(name.size(), 1) != ":") return std::nullopt;
  return line.substr(name.size() + 1);
}

std::optional<long> sequence_from(std::string_view digits) {
  long value = 0;
  const char* const end = digits.data() + digits.size();
  const auto [rest, fault] = std::from_chars(digits.data(), end, value);
  if (fault != std::errc{} || rest != end || value < 0 || value > max_sequence) return {};
  return value;
}

/// Stores one line of an event in the matching field.
void take_line(const std::string& line, Entry& entry) {
  if (const auto uid = value_of(line, "UID")) {
    entry.uid = *uid;
  } else if (const auto sequence = value_of(line, "SEQUENCE")) {
    entry.sequence = sequence_from(*sequence).value_or(0);
  } else if (const auto stamp = value_of(line, "DTSTAMP")) {
    entry.stamp = *stamp;
  } else {
    entry.body.push_back(line);
  }
}

/// The events of an older file; none if it is from another program or for another job.
std::vector<Entry> entries_before(std::string_view text, const std::string& calendar_uid) {
  std::vector<Entry> entries;
  std::optional<Entry> open;
  bool ours = false;
  bool this_job = false;
  for (const std::string& line : ical_lines(text)) {
    if (line == event_begins) {
      open = Entry{};
    } else if (line == event_ends && open) {
      if (!open->uid.empty() && !open->stamp.empty()) entries.push_back(std::move(*open));
      open.reset();
    } else if (open) {
      take_line(line, *open);
    } else {
      ours = ours || line == calendar_product;
      this_job = this_job || value_of(line, "UID") == calendar_uid;
    }
  }
  if (!ours || !this_job) entries.clear();
  return entries;
}

/// Gives entries their revision, and finds out which events of the older file are no longer
/// planned.
class Revision {
 public:
  Revision(const CalendarIssue& issue, const std::string& calendar_uid)
      : stamp_(ical_utc(issue.now)),
        count_(count_at(issue.now)),
        before_(entries_before(issue.before, calendar_uid)) {
    for (const Entry& entry : before_) unclaimed_.emplace(entry.uid, &entry);
  }

  void revise(Entry& entry) {
    const auto found = unclaimed_.find(entry.uid);
    const Entry* const old = found == unclaimed_.end() ? nullptr : found->second;
    if (old != nullptr) unclaimed_.erase(found);
    if (old != nullptr && old->body == entry.body) {
      entry.sequence = old->sequence;
      entry.stamp = old->stamp;
    } else {
      entry.sequence = next_after(old);
      entry.stamp = stamp_;
    }
  }

  /// The events of the older file that were not revised, in order.
  std::vector<Entry> gone() const {
    std::vector<Entry> entries;
    for (const Entry& entry : before_) {
      if (unclaimed_.contains(entry.uid)) entries.push_back(called_off(entry));
    }
    return entries;
  }

 private:
  static long count_at(UtcTime now) {
    const UtcTime first(Date(2020, 1, 1));
    const double seconds = seconds_between(first, now);
    return static_cast<long>(std::clamp(seconds, 0.0, static_cast<double>(max_sequence)));
  }

  long next_after(const Entry* old) const {
    return old == nullptr ? count_ : std::clamp(old->sequence + 1, count_, max_sequence);
  }

  Entry called_off(const Entry& old) const {
    if (std::find(old.body.begin(), old.body.end(), cancelled) != old.body.end()) return old;
    Entry entry{old.uid, next_after(&old), stamp_, {}};
    bool in_alarm = false;
    for (const std::string& line : old.body) {
      in_alarm = in_alarm || line == alarm_begins;
      if (!in_alarm) entry.body.push_back(line == confirmed ? std::string(cancelled) : line);
      in_alarm = in_alarm && line != alarm_ends;
    }
    return entry;
  }

  std::string stamp_;
  long count_;
  std::vector<Entry> before_;
  std::map<std::string, const Entry*> unclaimed_;
};

/// The job's name, or its site's, and whose day it is.
std::string calendar_name(const Job& job, const CalendarScope& scope) {
  const std::string& name = job.name.empty() ? job.site.name : job.name;
  return scope.finisher.empty() ? name : fmt::format("{}, {}", name, scope.finisher);
}

void put(std::string& text, std::string_view line) { text += ical_folded(line); }

void put(std::string& text, const Entry& entry) {
  put(text, event_begins);
  put(text, fmt::format("UID:{}", entry.uid));
  put(text, fmt::format("DTSTAMP:{}", entry.stamp));
  put(text, fmt::format("SEQUENCE:{}", entry.sequence));
  for (const std::string& line : entry.body) put(text, line);
  put(text, event_ends);
}

}  // namespace

std::string calendar_id(const Job& job) {
  return fmt::format("{}\x1f{}\x1f{:.2f}\x1f{:.2f}", job.name, job.site.name, job.site.latitude_deg,
                     job.site.longitude_deg);
}

std::string calendar(const CalendarContent& content, const CalendarIssue& issue) {
  const std::string calendar_uid = uuid_of_name(content.id);
  Revision revision(issue, calendar_uid);
  std::string text;
  put(text, "BEGIN:VCALENDAR");
  put(text, "VERSION:2.0");
  put(text, calendar_product);
  put(text, "CALSCALE:GREGORIAN");
  put(text, fmt::format("UID:{}", calendar_uid));  // RFC 7986, section 5.3
  put(text, "METHOD:PUBLISH");
  put(text, text_line("NAME", content.name));          // RFC 7986, section 5.1
  put(text, text_line("X-WR-CALNAME", content.name));  // what many readers look for in its place
  for (const SiteEvent& one : content.events) {
    Entry entry{uuid_of_name(fmt::format("{}\x1f{}", content.id, one.event.id)), 0, {}, {}};
    entry.body = body_of(one.event, *one.site, calendar_uid);
    revision.revise(entry);
    put(text, entry);
  }
  for (const Entry& entry : revision.gone()) put(text, entry);
  put(text, "END:VCALENDAR");
  return text;
}

std::string calendar(const PlannedPour& facts, const CalendarIssue& issue) {
  validate(facts);
  CalendarContent content{calendar_id(facts.job), calendar_name(facts.job, issue.scope), {}};
  for (CalendarEvent& event : calendar_events(facts, issue.scope)) {
    content.events.push_back({std::move(event), &facts.job.site});
  }
  return calendar(content, issue);
}

}  // namespace slabtide
