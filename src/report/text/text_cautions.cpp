#include "text_cautions.h"

#include <string>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "report/words/told_cautions.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

constexpr std::size_t caution_lead = 2;
constexpr std::size_t caution_hang = 15;  // behind "Thu 10:55 AM"

std::string caution_line(const ToldCaution& told, const Job& job, const TextStyle& style) {
  const Caution& caution = *told.first;
  const std::string when = caution.at ? day_clock(*caution.at, job) : std::string("always");
  const std::string about = told.zone.empty() ? std::string() : told.zone + ": ";
  const std::string weight = caution.level == CautionLevel::stop ? "STOP, " : std::string();
  const std::string lines =
      style.entry(when, weight + about + told.text, caution_lead, caution_hang);
  return caution.level == CautionLevel::stop ? style.warning(lines) : lines;
}

/// "short load, Thu 2:10 PM": a caution that is only called by its name.
std::string in_short(const ToldCaution& told, const Job& job) {
  std::string words = told.first->title;
  if (told.first->at) words += fmt::format(" {}", day_clock(*told.first->at, job));
  return words;
}

}  // namespace

std::string text_cautions(const std::vector<Caution>& cautions, const Job& job,
                          const TextStyle& style, bool all) {
  std::string text = style.heading("Watch for") + "\n";
  std::vector<std::string> rest;
  std::string last;
  for (const ToldCaution& one : told_cautions(cautions, job, max_told_places)) {
    const bool is_note = one.first->level == CautionLevel::note;
    const bool in_full = all || (is_note ? one.first->loss <= Loss::slab : one.at_once);
    if (in_full) {
      text += caution_line(one, job, style);
    } else {
      rest.push_back(in_short(one, job));
      last = caution_line(one, job, style);
    }
  }
  if (rest.size() == 1) return text + last;
  if (rest.empty()) return text;
  return text + style.entry("also",
                            fmt::format("{}: in full on the page (--write day.html)",
                                        fmt::join(rest, "; ")),
                            caution_lead, caution_hang);
}

}  // namespace slabtide
