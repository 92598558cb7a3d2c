#include "crew_lines.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/hand_words.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

DayLine task_line(const CrewPlan& crew, std::size_t task, std::size_t who, const Job& job) {
  const Assignment& at = crew.schedule.assignments[task];
  const std::string late =
      at.late_min > 0 ? fmt::format(", {} late", duration_words(at.late_min)) : std::string();
  const std::string others = others_words(crew, task, who);
  return {day_span(crew.starts[task], crew.ends[task], job),
          task_words(crew.tasks[task]) + (others.empty() ? "" : ", with " + others) + late};
}

}  // namespace

std::vector<DayLine> lines_of(const CrewPlan& crew, const CrewVisit& visit, std::size_t who,
                              const Job& job) {
  std::vector<DayLine> lines;
  auto idle = visit.idle.begin();
  for (const std::size_t task : visit.tasks) {
    if (idle != visit.idle.end() && idle->to == crew.starts[task]) {
      lines.push_back({day_span(idle->from, idle->to, job), "waits"});
      ++idle;
    }
    lines.push_back(task_line(crew, task, who, job));
  }
  return lines;
}

std::string visit_lines(const CrewPlan& crew, const CrewVisit& visit, std::size_t who,
                        const Job& job, const TextStyle& style) {
  constexpr std::size_t lead = 2;
  constexpr std::size_t min_words_width = 36;  // in a narrower column words are torn apart (ours)
  const std::vector<DayLine> lines = lines_of(crew, visit, who, job);
  std::size_t width = 0;
  for (const DayLine& line : lines) width = std::max(width, line.span.size());
  const bool has_room = width + 2 * lead + min_words_width <= style.width;
  std::string text;
  for (const DayLine& line : lines) {
    text += has_room
                ? style.entry(line.span, line.words, lead, width + 2 * lead)
                : style.paragraph(fmt::format("{}: {}", line.span, line.words), lead, 3 * lead);
  }
  return text;
}

}  // namespace slabtide
