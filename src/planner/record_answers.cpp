#include "record_answers.h"

#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "job/records/journal_line.h"
#include "job/records/read_journal.h"
#include "report/text/text_mixes.h"
#include "request/plan/finished_pour.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/job/records/mix_book.h"
#include "slabtide/request/plan/plan_request.h"
#include "slabtide/request/write/report_formats.h"

namespace slabtide {
namespace {

using Json = nlohmann::ordered_json;

TypedObservation typed_in(const Asked& asked) {
  TypedObservation typed;
  typed.at = asked.text("at");
  typed.reading = asked.text("reading");
  typed.zone = asked.text_or_empty("zone");
  if (const std::string value = asked.text_or_empty("value"); !value.empty()) {
    typed.value.push_back(value);
  }
  return typed;
}

Json nothing_noted() {
  return refused("nothing was noted for this pour", "Note what you see on the slab");
}

}  // namespace

/// The reading is judged alone, then beside what was noted before.
Json answer_note(const Asked& asked) {
  const Parsed<Job> job = read_job(asked.job_text(), asked.time_zones);
  if (!job.ok()) return refused(job.diagnostics);
  const Parsed<Journal> alone = read_journal(typed_line(typed_in(asked), *job.value), *job.value);
  if (!alone.ok()) return refused(alone.diagnostics);
  const Observation& reading = alone.value->readings.front();
  const std::string line = journal_line(reading, *job.value);
  const std::string before = asked.text_of(journal_path(asked.text("job")));
  const Parsed<Journal> together = read_journal(before + line, *job.value);
  if (!together.ok()) return refused(together.diagnostics);
  return {{"ok", true},
          {"findings", findings_of(together.diagnostics)},
          {"line", line},
          {"heading", journal_heading(*job.value)},
          {"sentence", observation_sentence(reading, *job.value)}};
}

Json answer_check_back(const Asked& asked) {
  std::ostringstream messages;
  const auto pour = plan_request(asked.request(), asked.sources(), messages, 1);
  if (!pour) return {{"ok", false}, {"findings", Json::array()}, {"messages", messages.str()}};
  if (pour->journal.readings.empty()) return nothing_noted();
  const std::vector<CheckedObservation> checked = checked_by_hour(*pour);
  const CheckBackFacts facts{*pour, pour->journal, checked};
  Json files = Json::object();
  for (const auto ending : endings_of(check_back_formats())) {
    files[std::string(ending)] = *made_as(ending, check_back_formats(), facts, {pour->now, {}});
  }
  return {{"ok", true}, {"findings", Json::array()}, {"files", std::move(files)}};
}

/// The job's mix wants a name, by which later jobs ask for it.
Json answer_learn(const Asked& asked) {
  const std::string path = asked.text("job");
  const Parsed<Job> job = read_job(asked.job_text(), asked.time_zones);
  if (!job.ok()) return refused(job.diagnostics);
  if (job.value->mix.name.empty()) {
    return refused("the mix has no name", "Give it one: later pours find it by its name",
                   "mix.name");
  }
  const Parsed<Journal> journal = read_journal(asked.text_of(journal_path(path)), *job.value);
  if (!journal.ok()) return refused(journal.diagnostics);
  if (journal.value->readings.empty()) return nothing_noted();
  std::ostringstream messages;
  const auto lesson = learn_job(path, *job.value, asked.text_of(book_path({.path = path})),
                                asked.sources(), messages, 1);
  if (!lesson) return {{"ok", false}, {"findings", Json::array()}, {"messages", messages.str()}};
  if (!lesson->book) {
    return refused("the mix book is written in a way that cannot be added to",
                   "Write [[mix]] and [[mix.pour]] on lines of their own, each list on one line");
  }
  return {
      {"ok", true}, {"findings", Json::array()}, {"book", *lesson->book}, {"told", lesson->told}};
}

Json answer_mixes(const Asked& asked) {
  const Parsed<MixBook> book = read_mix_book(asked.text("text"));
  if (!book.ok()) return refused(book.diagnostics);
  Json mixes = Json::array();
  for (const BookedMix& mix : book.value->mixes) {
    mixes.push_back({{"name", mix.name}, {"pours", mix.pours.size()}});
  }
  return {{"ok", true},
          {"findings", findings_of(book.diagnostics)},
          {"mixes", std::move(mixes)},
          {"text", text_mixes(*book.value, TextStyle{})}};
}

}  // namespace slabtide
