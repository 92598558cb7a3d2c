#include "text_cautions.h"

#include <fmt/format.h>

#include "core/text.h"
#include "report/words/told_cautions.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

constexpr std::size_t indent = 2;
constexpr std::size_t time_width = 11;

std::string caution_line(const ToldCaution& told, const Job& job, const TextStyle& style) {
  const Caution& caution = *told.first;
  const std::string when = caution.at ? day_clock(*caution.at, job) : std::string("always");
  const std::string about = told.zone.empty() ? std::string() : told.zone + ": ";
  const std::string weight = caution.level == CautionLevel::stop ? "STOP, " : std::string();
  const std::string wrapped = wrap(weight + about + told.text, text_width - indent - time_width, 0);
  std::string lines;
  std::size_t from = 0;
  while (from < wrapped.size()) {
    const std::size_t to = std::min(wrapped.find('\n', from), wrapped.size());
    lines += pad("", indent) + pad(from == 0 ? when : "", time_width);
    lines += wrapped.substr(from, to - from) + "\n";
    from = to + 1;
  }
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
