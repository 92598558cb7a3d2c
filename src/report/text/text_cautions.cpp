#include "text_cautions.h"

#include <fmt/format.h>

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

}  // namespace

std::string text_cautions(const std::vector<Caution>& cautions, const Job& job,
                          const TextStyle& style) {
  std::string text = style.heading("Watch for") + "\n";
  for (const ToldCaution& told : told_cautions(cautions, job)) {
    text += caution_line(told, job, style);
  }
  return text;
}

}  // namespace slabtide
