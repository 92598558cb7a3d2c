#include "note_command.h"

#include <algorithm>
#include <ostream>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>

#include "cli/guard/write_guard.h"
#include "cli/jobs/text_files.h"
#include "core/text.h"
#include "core/typed_date.h"
#include "core/utf8.h"
#include "job/records/journal_line.h"
#include "job/records/read_journal.h"
#include "request/plan/moment.h"
#include "slabtide/core/files.h"
#include "slabtide/core/units.h"
#include "slabtide/day/field/check_back.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"
#include "slabtide/request/plan/plan_request.h"

namespace slabtide {

namespace {

CommandLine note_line() {
  CommandLine line;
  line.name = "note";
  line.summary = "note what you see on the slab, for the plan to go by";
  line.operand = "JOB [READING [VALUE]]";
  line.operand_needed = false;
  line.max_operands = 4;  // the job, the observation, its value and the value's unit
  line.options = {
      {"at", "TIME",
       "when: 11:05 or 2:10 PM, of the pour's day or night, or \"5/15/2026 9 AM\"; else now",
       false},
      {"zone", "NAME", "where; may be left out where there is one zone", false},
      {"part", "NAME", "the part of it, as the plan calls it", false},
      {"undo", "", "strike the last reading that was noted", false},
      {"list", "", "the readings there are, and how to take them", false},
      {"now", "TIME", "note as if it were this time; else the clock", false},
      force_option()};
  line.details =
      "Examples: slabtide note pad.toml --zone landing --at 11:05 no-dent\n"
      "          slabtide note pad.toml --at 8:05 concrete 63\n"
      "          slabtide note pad.toml --zone pad sheen-gone      (just now)\n"
      "Without a reading, what was noted so far.\n";
  return line;
}

/// "thumbprint    thumbprint of 1/4 in: a thumb pressed ...", with the words in their own column.
std::string list_entry(ObservationKind kind) {
  constexpr std::size_t column = 14;
  std::string words = fmt::format("{}: {}", observation_words(kind), observation_hint(kind));
  if (observation_measure(kind) != ObservationMeasure::nothing) words += "; needs its value";
  if (!observation_needs_zone(kind)) words += "; of a zone or of the whole job";
  std::string text = fmt::format("{:<{}}", observation_id(kind), column);
  for (const char c : wrap(words, text_width - column, 0)) {
    text += c;
    if (c == '\n') text.append(column, ' ');
  }
  return text + "\n";
}

int print_list(std::ostream& out) {
  for (std::size_t i = 0; i < observation_kind_count; ++i) {
    out << list_entry(static_cast<ObservationKind>(i));
  }
  return exit_done;
}

/// One run of the command: each step returns true to go on, or sets the exit code.
class Note {
 public:
  Note(const ParsedLine& line, std::ostream& out, std::ostream& err)
      : line_(line), out_(out), err_(err) {}

  int run() {
    if (line_.operands().empty()) return refuse("JOB is missing", "slabtide note --help");
    if (!read_job_file() || !read_now() || !check_journal()) return code_;
    if (line_.has("undo")) return undo();
    if (line_.operands().size() == 1) return show();
    if (type_observation() && judge_alone() && check_part()) append();
    return code_;
  }

 private:
  int refuse(const std::string& what, const std::string& next_step) {
    err_ << fmt::format("slabtide note: {}\n  {}\n", printable(what), printable(next_step));
    return code_ = exit_input_wrong;
  }
  bool refused(const std::string& what, const std::string& next_step) {
    refuse(what, next_step);
    return false;
  }

  bool could_not(const std::string& path, const FileError& error) {
    err_ << fmt::format("{}: {}\n", printable(path), error.message);
    if (!error.next_step.empty()) err_ << "  " << error.next_step << "\n";
    code_ = exit_could_not;
    return false;
  }

  bool read_job_file() {
    const std::string& path = line_.operands().front();
    const FileText file = read_file(path);
    if (!file.text) {
      could_not(path, file.error);
      code_ = exit_input_wrong;
      return false;
    }
    Parsed<Job> reading = read_job(*file.text);
    if (!reading.ok()) {
      err_ << render_all(reading.diagnostics, path, *file.text);
      code_ = exit_input_wrong;
      return false;
    }
    job_ = std::move(*reading.value);
    path_ = journal_path(path);
    return true;
  }

  /// Refuses a job named pad.journal, whose journal would be the job file itself.
  bool check_journal() {
    const FileIdentity journal = identity_of(path_);
    const std::string& job = line_.operands().front();
    if (journal != identity_of(job)) return true;
    const WriteGuard guard({{job, "the job"}}, false);
    const WrittenFile file{path_, FileKind::journal};
    if (const auto fault = guard.fault({&file, 1})) code_ = refuse_to_write("note", *fault, err_);
    return false;
  }

  /// Takes the old journal. If it cannot be read its findings are shown, but noting still works.
  void take_old(std::string_view text) {
    old_text_ = text;
    Parsed<Journal> reading = read_journal(old_text_, job_);
    err_ << render_all(reading.diagnostics, path_, old_text_);
    if (reading.ok()) old_ = std::move(*reading.value);
    old_ok_ = reading.ok();
  }

  bool read_old_journal() {
    if (is_missing(path_)) {
      take_old("");
      return true;
    }
    const FileText file = read_file(path_);
    if (!file.text) return could_not(path_, file.error);
    take_old(*file.text);
    return true;
  }

  bool read_now() {
    const auto text = line_.text("now");
    now_ = boost::posix_time::second_clock::universal_time();
    if (!text) return true;
    const auto moment = read_moment(*text, job_.site.time_zone);
    if (!moment) return refused(moment_fault(*text), "slabtide note --help");
    now_ = *moment;
    return true;
  }

  int show() {
    if (!read_old_journal()) return code_;
    for (const Observation& reading : old_.readings) {
      out_ << observation_sentence(reading, job_) << "\n";
    }
    if (old_.readings.empty() && old_ok_) {
      out_ << "Nothing is noted yet; slabtide note --list shows what can be.\n";
    }
    return old_ok_ ? exit_done : exit_input_wrong;
  }

  int undo() {
    if (line_.operands().size() > 1) {
      return refuse("--undo strikes the last reading: it takes no other", "leave one of them out");
    }
    const auto last_there = [this] {
      if (!old_ok_ || !old_.readings.empty()) return true;
      return refused("there is nothing to undo",
                     fmt::format("{} holds no reading", printable(path_)));
    };
    if (!add_line(fmt::format("{}\n", undo_word), last_there)) return code_;
    out_ << (old_ok_ ? fmt::format("struck from {}: {}\n", printable(path_),
                                   observation_sentence(old_.readings.back(), job_))
                     : fmt::format("struck from {}: the last line\n", printable(path_)));
    return exit_done;
  }

  bool type_observation() {
    const std::vector<std::string>& words = line_.operands();
    typed_.reading = words[1];
    typed_.value.assign(words.begin() + 2, words.end());
    typed_.zone = line_.text("zone").value_or("");
    typed_.part = line_.text("part").value_or("");
    const auto kind = observation_from_id(typed_.reading);
    if (kind && observation_measure(*kind) == ObservationMeasure::nothing &&
        !typed_.value.empty()) {
      return refused(fmt::format("{} takes no value, got '{}'", typed_.reading, typed_.value[0]),
                     "the zone is named by --zone");
    }
    if (typed_.zone.empty() && kind && observation_needs_zone(*kind) && job_.zones.size() == 1) {
      typed_.zone = job_.zones.front().name;
    }
    if (typed_.zone.empty() && !typed_.part.empty()) {
      return refused("--part is a part of a zone", "name the zone with --zone");
    }
    type_time();
    return true;
  }

  /// Without --at it is now, which the answer tells.
  void type_time() {
    const auto at = line_.text("at");
    if (!at) {
      typed_.at = iso8601_minute(now_, job_.site.time_zone);
      return;
    }
    typed_.at = *at;
    if (const auto past = past_noon(*at)) {
      typed_.at = iso8601_minute(*past, job_.site.time_zone);
      return;
    }
    const DayWords words{job_.units == UnitSystem::us, clock_of(job_).day(now_)};
    const auto instant = parse_typed_instant(*at, words);
    if (instant && !instant->offset) {
      const Duration clock = instant->local.time_of_day();
      typed_.at = fmt::format("{}T{:02}:{:02}",
                              boost::gregorian::to_iso_extended_string(instant->local.date()),
                              clock.hours(), clock.minutes());
    }
  }

  /// On a clock of twelve hours, "2:10" without AM or PM is past noon if it would else be still to
  /// come.
  std::optional<UtcTime> past_noon(const std::string& at) const {
    const auto clock = parse_clock(at);
    if (!clock || clock_style(job_).hours != HourCount::twelve) return std::nullopt;
    const bool has_half = at.find_first_not_of("0123456789: ") != std::string::npos;
    const int noon_h = 12;
    if (has_half || at.front() == '0' || clock->hours() == 0 || clock->hours() >= noon_h) {
      return std::nullopt;
    }
    if (clock_instant(*clock, job_) <= now_) return std::nullopt;
    const UtcTime past = clock_instant(*clock + boost::posix_time::hours(noon_h), job_);
    return past <= now_ ? std::optional(past) : std::nullopt;
  }

  /// Reports the findings about one line, without quoting the line, which is not in the file.
  bool tell(const std::vector<Diagnostic>& findings, std::size_t its_line) {
    bool sound = true;
    for (const Diagnostic& finding : findings) {
      if (!finding.where || finding.where->line != its_line) continue;
      const std::string also = finding.also_where ? fmt::format("  see {}:{}\n", printable(path_),
                                                                finding.also_where->line)
                                                  : "";
      err_ << fmt::format("slabtide note: {}: {}\n{}  {}\n", finding.key,
                          printable(finding.message), also, printable(finding.next_step));
      sound = sound && finding.severity != Severity::error;
    }
    if (!sound) code_ = exit_input_wrong;
    return sound;
  }

  /// Checks the new line alone, by the journal's rules.
  bool judge_alone() {
    Parsed<Journal> alone = read_journal(typed_line(typed_, job_), job_);
    if (!alone.ok()) {
      tell(alone.diagnostics, 1);
      code_ = exit_input_wrong;
      return false;
    }
    reading_ = alone.value->readings.front();
    alone_findings_ = std::move(alone.diagnostics);
    return true;
  }

  /// Checks the new line together with what the journal contains.
  bool judge_together() {
    if (!old_ok_) return tell(alone_findings_, 1);
    const auto whole_end = old_text_.rfind('\n');
    std::string text = whole_end == std::string::npos ? "" : old_text_.substr(0, whole_end + 1);
    const auto number = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
    text += typed_line(typed_, job_);
    return tell(read_journal(text, job_).diagnostics, number);
  }

  /// Uses the planned time of placing if nobody has noted the actual one.
  bool check_placed() {
    const bool of_the_slab = observation_needs_zone(reading_.kind);
    if (!of_the_slab || reading_.kind == ObservationKind::placed) return true;
    for (const Observation& other : old_.readings) {
      if (other.kind == ObservationKind::placed && other.zone == reading_.zone) return true;
    }
    const auto practice = read_practice(job_.practice_overrides_toml, default_practice());
    if (!practice.ok()) return true;
    const OrderPlan order = plan_order(job_, practice.value->placing);
    for (std::size_t i = 0; i < job_.zones.size(); ++i) {
      const UtcTime start = order.placings[i].start;
      if (job_.zones[i].name != reading_.zone || reading_.at > start) continue;
      return refused(
          fmt::format("{} is not placed until {}", reading_.zone, day_clock(start, job_)),
          "if it was placed earlier, note that first: slabtide note JOB --zone ... "
          "--at ... placed");
    }
    return true;
  }

  /// Checks the part against the plan's parts; if the job cannot be planned now, any name is
  /// accepted.
  bool check_part() {
    if (reading_.part.empty()) return true;
    std::ostream nowhere(nullptr);
    const auto planned = plan_request({.path = line_.operands().front()}, text_files(), nowhere);
    if (!planned) return true;
    const PlaceId place = place_of(reading_, planned->plan);
    const ZonePlan& zone = planned->plan.zones[place.zone];
    const PartPlan* const part = zone.part(place.part);
    if (part != nullptr && part != &zone.whole) {
      reading_.part = part->name;
      reading_.part_id = part->id;
      return true;
    }
    std::string names;
    for (const PartPlan& one : zone.parts) names += fmt::format(" \"{}\"", one.name);
    if (zone.border) names += fmt::format(" \"{}\"", zone.border->name);
    return refused(fmt::format("{} has no part '{}'", reading_.zone, reading_.part),
                   names.empty() ? "it is planned as one: leave --part out"
                                 : fmt::format("its parts are{}", names));
  }

  /// Adds the line if `sound`, called while the journal is locked, allows it: another `note` cannot
  /// come in between the check and the new line.
  template <class Sound>
  bool add_line(const std::string& text, Sound sound) {
    const WriteGuard guard({}, line_.has("force"));
    bool refused = false;
    const auto choose = [&](std::string_view before) -> std::optional<NewLine> {
      if (const auto fault = guard.foreign({path_, FileKind::journal}, before)) {
        code_ = refuse_to_write("note", *fault, err_);
        refused = true;
        return std::nullopt;
      }
      take_old(before);
      refused = !sound();
      if (refused) return std::nullopt;
      return NewLine{text, journal_heading(job_), std::string(unfinished_mark)};
    };
    const Appended done = append_line(path_, choose);
    if (done.error) return could_not(path_, *done.error);
    return !refused;
  }

  void append() {
    const auto sound = [this] { return judge_together() && check_placed(); };
    if (!add_line(journal_line(reading_, job_), sound)) return;
    out_ << fmt::format("noted in {}: {}\n", printable(path_),
                        observation_sentence(reading_, job_));
    warn_of_future();
  }

  /// On the pour's day, a time in the future is usually a mistake.
  void warn_of_future() {
    const double ahead_h = seconds_between(now_, reading_.at) / seconds_per_hour;
    const double into_pour_h = seconds_between(job_.pour.start, now_) / seconds_per_hour;
    constexpr double clocks_differ_h = 0.25;
    if (ahead_h < clocks_differ_h || into_pour_h < -early_start_h) return;
    err_ << fmt::format(
        "slabtide note: warning: that is {:.1f} h ahead of the clock\n"
        "  if it was a mistake: slabtide note JOB --undo\n",
        ahead_h);
  }

  const ParsedLine& line_;
  std::ostream& out_;
  std::ostream& err_;
  int code_ = exit_done;
  Job job_;
  std::string path_;
  std::string old_text_;
  Journal old_;
  bool old_ok_ = false;
  UtcTime now_;
  TypedObservation typed_;
  Observation reading_;
  std::vector<Diagnostic> alone_findings_;
};

int run_note(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  return line.has("list") ? print_list(out) : Note(line, out, err).run();
}

}  // namespace

const Command note_command{note_line, run_note};

}  // namespace slabtide
