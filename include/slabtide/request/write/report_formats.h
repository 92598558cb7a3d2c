#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/day/days/planned_days.h"
#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/report/files/calendar_scope.h"
#include "slabtide/report/words/check_back_facts.h"
#include "slabtide/report/words/compare_facts.h"
#include "slabtide/report/words/outlook_facts.h"

namespace slabtide {

/// What a format may use besides the facts.
struct Writing {
  UtcTime now;
  std::string before;  ///< the file's present text; empty if it cannot be read
  CalendarScope calendar = {};
};

/// A format of a written report, chosen by the ending of the file name.
template <class Facts>
struct FileFormat {
  std::string_view ending;  ///< ".json"
  std::string (*make)(const Facts& facts, const Writing& writing);
};

/// The formats of a plan, a comparison, an outlook, the days of a forecast and a finished pour.
std::span<const FileFormat<PlannedPour>> plan_formats();
std::span<const FileFormat<CompareFacts>> compare_formats();
std::span<const FileFormat<OutlookFacts>> outlook_formats();
std::span<const FileFormat<PlannedDays>> days_formats();
std::span<const FileFormat<CheckBackFacts>> check_back_formats();

/// The endings of the formats, in order.
template <class Facts>
std::vector<std::string_view> endings_of(std::span<const FileFormat<Facts>> formats) {
  std::vector<std::string_view> endings;
  for (const FileFormat<Facts>& format : formats) endings.push_back(format.ending);
  return endings;
}

/// The report in the format with this ending; empty if there is no such format.
template <class Facts>
std::optional<std::string> made_as(std::string_view ending,
                                   std::span<const FileFormat<Facts>> formats, const Facts& facts,
                                   const Writing& writing) {
  for (const FileFormat<Facts>& format : formats) {
    if (format.ending == ending) return format.make(facts, writing);
  }
  return std::nullopt;
}

}  // namespace slabtide
