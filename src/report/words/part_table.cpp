#include "part_table.h"

#include <algorithm>
#include <functional>

#include <fmt/format.h>

#include "core/text.h"
#include "job/model/wording.h"
#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

std::string window_words(const OperationWindow& window, const Job& job) {
  if (!window.opens) return std::string(after_plan_words);
  if (!window.closes) return fmt::format("from {}", day_clock(*window.opens, job));
  if (window.is_never()) return "none";
  return day_span(*window.opens, *window.closes, job);
}

std::string later_words(const OperationWindow& window, const Job& job) {
  if (window.is_never()) return fmt::format("at no time: {}", window.note);
  if (window.open_all_over && window.closes) {
    return fmt::format("from {}, started by {}", day_clock(*window.open_all_over, job),
                       day_clock(*window.closes, job));
  }
  if (window.open_all_over) return fmt::format("from {}", day_clock(*window.open_all_over, job));
  return window.note.empty() ? std::string(after_plan_words) : window.note;
}

std::string band_words(const std::optional<TimeBand>& band, const Job& job) {
  if (!band || !band->early) return {};
  if (!band->late) return fmt::format("from {}", day_clock(*band->early, job));
  return day_span(*band->early, *band->late, job);
}

namespace {

constexpr std::size_t indent = 2;
constexpr std::size_t label_width = 20;
constexpr std::size_t min_column = 13;
constexpr std::size_t gap = 2;

/// A table with a row for each label and a column for each part.
class PartTable {
 public:
  explicit PartTable(std::vector<const PartPlan*> parts, const std::string& whole_name)
      : parts_(std::move(parts)) {
    std::vector<std::string> names;
    for (const PartPlan* part : parts_) {
      names.push_back(part->name.empty() ? whole_name : part->name);
    }
    rows_.push_back({"", std::move(names)});
  }

  void row(std::string label, const std::function<std::string(const PartPlan&)>& cell) {
    std::vector<std::string> cells;
    for (const PartPlan* part : parts_) cells.push_back(cell(*part));
    const bool says_something = std::any_of(cells.begin(), cells.end(),
                                            [](const std::string& text) { return !text.empty(); });
    if (says_something) rows_.push_back({std::move(label), std::move(cells)});
  }

  std::string text(std::size_t width) const {
    std::string text;
    for (std::size_t first = 0; first < parts_.size();) {
      const std::size_t end = end_of_block(first, width);
      text += block(first, end);
      first = end;
    }
    return text;
  }

 private:
  struct Row {
    std::string label;
    std::vector<std::string> cells;
  };

  /// Behind the last of the columns from `first` on that fit beside each other, one at least.
  std::size_t end_of_block(std::size_t first, std::size_t width) const {
    std::size_t taken = indent + label_width + column_width(first);
    std::size_t end = first + 1;
    while (end < parts_.size() && taken + gap + column_width(end) <= width) {
      taken += gap + column_width(end++);
    }
    return end;
  }

  std::string block(std::size_t first, std::size_t end) const {
    std::string text;
    for (const Row& row : rows_) {
      std::string line = pad("", indent) + pad(row.label, label_width);
      for (std::size_t i = first; i < end; ++i) {
        line += pad(row.cells[i], column_width(i)) + pad("", gap);
      }
      line.erase(line.find_last_not_of(' ') + 1);
      if (!line.empty()) text += line + "\n";
    }
    return text;
  }

  std::size_t column_width(std::size_t column) const {
    std::size_t width = min_column;
    for (const Row& row : rows_) width = std::max(width, display_width(row.cells[column]));
    return width;
  }

  std::vector<const PartPlan*> parts_;
  std::vector<Row> rows_;
};

std::string peak_evaporation_words(const PartPlan& part, const Job& job) {
  const std::string rate = evaporation_words(part.peak_evaporation_kg_m2_h, job.units);
  return rate.substr(0, rate.find(' ')) + " at " + day_clock(part.peak_evaporation_at, job);
}

std::string evaporation_label(UnitSystem units) {
  return units == UnitSystem::us ? "drying, lb/ft²/h" : "drying, kg/m²/h";
}

/// The hours between which the main work opens and closes on eight days out of ten.
void add_band_rows(PartTable& table, Operation main, const Job& job) {
  table.row("  opens, 8 in 10", [&job, main](const PartPlan& part) {
    const OperationWindow* window = part.window(main);
    return window == nullptr || window->is_never() ? std::string()
                                                   : band_words(window->opens_band, job);
  });
  table.row("  closes, 8 in 10", [&job, main](const PartPlan& part) {
    const OperationWindow* window = part.window(main);
    return window == nullptr ? std::string() : band_words(window->closes_band, job);
  });
}

void add_window_rows(PartTable& table, Finish finish, const Job& job) {
  const Operation main = main_operation(finish);
  for (const Operation operation : operations_of(finish)) {
    table.row(std::string(operation_words(operation)), [&job, operation](const PartPlan& part) {
      const OperationWindow* window = part.window(operation);
      return window == nullptr ? std::string() : window_words(*window, job);
    });
    if (operation != main) continue;
    add_band_rows(table, main, job);
    table.row("  ready all over", [&job, main](const PartPlan& part) {
      const OperationWindow* window = part.window(main);
      return window == nullptr || window->is_never() ? std::string()
                                                     : day_clock(window->open_all_over, job);
    });
  }
}

}  // namespace

std::string part_table(const std::vector<const PartPlan*>& parts, Finish finish,
                       const std::string& whole_name, const Job& job, std::size_t width) {
  PartTable table(parts, whole_name);
  table.row("in the sun", [](const PartPlan& part) {
    return percent_words(part.sunlit_fraction) + " of the time";
  });
  table.row("sheen off", [&job](const PartPlan& part) { return day_clock(part.sheen_gone, job); });
  add_window_rows(table, finish, job);
  table.row("initial set",
            [&job](const PartPlan& part) { return day_clock(part.initial_set, job); });
  table.row("final set", [&job](const PartPlan& part) { return day_clock(part.final_set, job); });
  table.row(evaporation_label(job.units),
            [&job](const PartPlan& part) { return peak_evaporation_words(part, job); });
  table.row("hottest surface", [&job](const PartPlan& part) {
    return temperature_words(part.surface_peak_c, job.units) + " at " +
           day_clock(part.surface_peak_at, job);
  });
  return table.text(width);
}

}  // namespace slabtide
