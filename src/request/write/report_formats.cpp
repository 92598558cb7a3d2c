#include "slabtide/request/write/report_formats.h"

#include <array>

#include "report/files/calendar.h"
#include "report/files/csv_days.h"
#include "report/files/csv_plan.h"
#include "report/files/json_check_back.h"
#include "report/files/json_compare.h"
#include "report/files/json_days.h"
#include "report/files/json_plan.h"
#include "report/page/page_check_back.h"
#include "report/page/page_compare.h"
#include "report/page/page_days.h"
#include "report/page/page_outlook.h"
#include "report/page/page_plan.h"

namespace slabtide {

namespace {

/// A format that uses only the facts.
template <class Facts, std::string (*make)(const Facts&)>
std::string from_facts(const Facts& facts, const Writing& /*writing*/) {
  return make(facts);
}

std::string day_calendar(const PlannedPour& facts, const Writing& writing) {
  return calendar(facts, {writing.now, writing.before, writing.calendar});
}

constexpr std::array plan_table{
    FileFormat<PlannedPour>{".html", from_facts<PlannedPour, page_plan>},
    FileFormat<PlannedPour>{".json", from_facts<PlannedPour, json_plan>},
    FileFormat<PlannedPour>{".ics", day_calendar},
    FileFormat<PlannedPour>{".csv", from_facts<PlannedPour, csv_plan>},
};

constexpr std::array compare_table{
    FileFormat<CompareFacts>{".html", from_facts<CompareFacts, page_compare>},
    FileFormat<CompareFacts>{".json", from_facts<CompareFacts, json_compare>},
};

constexpr std::array outlook_table{
    FileFormat<OutlookFacts>{".html", from_facts<OutlookFacts, page_outlook>},
};

constexpr std::array days_table{
    FileFormat<PlannedDays>{".html", from_facts<PlannedDays, page_days>},
    FileFormat<PlannedDays>{".json", from_facts<PlannedDays, json_days>},
    FileFormat<PlannedDays>{".csv", from_facts<PlannedDays, csv_days>},
};

constexpr std::array check_back_table{
    FileFormat<CheckBackFacts>{".html", from_facts<CheckBackFacts, page_check_back>},
    FileFormat<CheckBackFacts>{".json", from_facts<CheckBackFacts, json_check_back>},
};

}  // namespace

std::span<const FileFormat<PlannedPour>> plan_formats() { return plan_table; }

std::span<const FileFormat<CompareFacts>> compare_formats() { return compare_table; }

std::span<const FileFormat<OutlookFacts>> outlook_formats() { return outlook_table; }

std::span<const FileFormat<PlannedDays>> days_formats() { return days_table; }

std::span<const FileFormat<CheckBackFacts>> check_back_formats() { return check_back_table; }

}  // namespace slabtide
