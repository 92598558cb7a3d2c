#include "forecast_csv.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"
#include "csv_table.h"
#include "findings.h"
#include "forecast_draft.h"
#include "forecast_time.h"
#include "slabtide/core/units.h"
#include "weather_quantity.h"

namespace slabtide {
namespace {

enum class ColumnRole { time, value, thunder };

struct ColumnKind {
  std::string_view name;
  ColumnRole role = ColumnRole::value;
  WeatherQuantity quantity = WeatherQuantity::air;
  WeatherUnit unit = WeatherUnit::celsius;
};

using enum WeatherQuantity;

constexpr std::array<ColumnKind, 20> column_kinds{{
    {"time", ColumnRole::time},
    {"air_f", ColumnRole::value, air, WeatherUnit::fahrenheit},
    {"air_c", ColumnRole::value, air, WeatherUnit::celsius},
    {"dew_point_f", ColumnRole::value, dew_point, WeatherUnit::fahrenheit},
    {"dew_point_c", ColumnRole::value, dew_point, WeatherUnit::celsius},
    {"humidity_percent", ColumnRole::value, humidity, WeatherUnit::percent},
    {"wind_mph", ColumnRole::value, wind, WeatherUnit::mph},
    {"wind_m_s", ColumnRole::value, wind, WeatherUnit::m_s},
    {"wind_km_h", ColumnRole::value, wind, WeatherUnit::km_h},
    {"wind_kn", ColumnRole::value, wind, WeatherUnit::knots},
    {"gust_mph", ColumnRole::value, gust, WeatherUnit::mph},
    {"gust_m_s", ColumnRole::value, gust, WeatherUnit::m_s},
    {"gust_km_h", ColumnRole::value, gust, WeatherUnit::km_h},
    {"gust_kn", ColumnRole::value, gust, WeatherUnit::knots},
    {"cloud_percent", ColumnRole::value, cloud, WeatherUnit::percent},
    {"solar_w_m2", ColumnRole::value, solar, WeatherUnit::w_m2},
    {"rain_in", ColumnRole::value, rain, WeatherUnit::inch},
    {"rain_mm", ColumnRole::value, rain, WeatherUnit::mm},
    {"rain_chance_percent", ColumnRole::value, rain_chance, WeatherUnit::percent},
    {"thunder", ColumnRole::thunder},
}};

std::string lower_case(std::string text) {
  const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
  std::transform(text.begin(), text.end(), text.begin(), lower);
  return text;
}

const ColumnKind* find_kind(const std::string& name) {
  const auto* const found = std::find_if(column_kinds.begin(), column_kinds.end(),
                                         [&](const ColumnKind& kind) { return kind.name == name; });
  return found == column_kinds.end() ? nullptr : found;
}

std::array<std::string_view, column_kinds.size()> kind_names() {
  std::array<std::string_view, column_kinds.size()> names;
  std::transform(column_kinds.begin(), column_kinds.end(), names.begin(),
                 [](const ColumnKind& kind) { return kind.name; });
  return names;
}

std::string unknown_column_advice(const std::string& name) {
  const auto names = kind_names();
  if (const auto close = nearest(name, names)) return fmt::format("did you mean {}?", *close);
  return fmt::format("the columns known are {}", fmt::join(names, ", "));
}

struct Column {
  const ColumnKind* kind = nullptr;
  SourcePosition where;
};

bool same_matter(const ColumnKind& a, const ColumnKind& b) {
  return a.role == b.role && (a.role != ColumnRole::value || a.quantity == b.quantity);
}

/// Reads the line of column names.
class HeaderReader {
 public:
  explicit HeaderReader(Findings& findings) : findings_(findings) {}

  std::vector<Column> read(const CsvRow& row) {
    for (const CsvField& field : row) add(field);
    if (!findings_.has_error()) check_needed(row.front().where);
    return std::move(columns_);
  }

 private:
  void add(const CsvField& field) {
    const std::string name = lower_case(field.text);
    const ColumnKind* kind = find_kind(name);
    if (name.empty()) {
      findings_.error(field.where, "", "a column without a name",
                      "name the column, or take the comma away");
    } else if (kind == nullptr) {
      findings_.error(field.where, "", fmt::format("unknown column {}", in_quotes(field.text)),
                      unknown_column_advice(name));
    } else {
      check_single(*kind, field.where);
    }
    columns_.push_back({kind, field.where});
  }

  void check_single(const ColumnKind& kind, SourcePosition where) {
    for (const Column& other : columns_) {
      if (other.kind == nullptr || !same_matter(*other.kind, kind)) continue;
      findings_.add({.severity = Severity::error,
                     .key = std::string{kind.name},
                     .message = other.kind == &kind
                                    ? "the column is there twice"
                                    : fmt::format("the same quantity as {}", other.kind->name),
                     .where = where,
                     .also_where = other.where,
                     .next_step = "keep one of the two"});
      return;
    }
  }

  bool has(ColumnRole role, WeatherQuantity quantity) const {
    return std::any_of(columns_.begin(), columns_.end(), [&](const Column& column) {
      return column.kind->role == role &&
             (role != ColumnRole::value || column.kind->quantity == quantity);
    });
  }

  void check_needed(SourcePosition where) {
    const auto missing = [&](std::string_view what) {
      findings_.error(where, "", fmt::format("no column for {}", what),
                      "the first line names the columns, such as "
                      "time,air_f,dew_point_f,wind_mph,cloud_percent");
    };
    if (!has(ColumnRole::time, air)) missing("the time (time)");
    if (!has(ColumnRole::value, air)) missing("the air temperature (air_f or air_c)");
    if (!has(ColumnRole::value, dew_point) && !has(ColumnRole::value, humidity))
      missing("the moisture (dew_point_f, dew_point_c or humidity_percent)");
    if (!has(ColumnRole::value, wind)) missing("the wind (wind_mph, wind_m_s or wind_km_h)");
  }

  Findings& findings_;
  std::vector<Column> columns_;
};

/// Reads the rows below the column names.
class RowReader {
 public:
  RowReader(std::vector<Column> columns, const Clock& clock, Findings& findings)
      : columns_(std::move(columns)), clock_(clock), times_(clock.zone), findings_(findings) {}

  void read(const CsvRow& row) {
    if (row.size() != columns_.size()) {
      findings_.error(row.back().where, "",
                      fmt::format("{} field{}, expected {} as in the first line", row.size(),
                                  row.size() == 1 ? "" : "s", columns_.size()),
                      "an empty field between commas is a missing value");
      return;
    }
    DraftHour hour;
    bool has_time = false;
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (columns_[i].kind->role == ColumnRole::time) {
        has_time = read_time(row[i], hour);
      } else {
        read_field(*columns_[i].kind, row[i], hour);
      }
    }
    if (const auto fault = contradiction(hour)) findings_.error(row.front().where, "", *fault);
    if (has_time) keep(hour, row);
  }

  void report_gaps() {
    for (const ForecastGap& gap : find_gaps(hours_)) report(gap);
  }

  std::vector<DraftHour> take_hours() { return std::move(hours_); }

 private:
  bool read_time(const CsvField& field, DraftHour& hour) {
    const ForecastInstant instant = times_.read(field.text);
    if (!instant.utc) {
      findings_.error(field.where, "time",
                      fmt::format("{} {}", in_quotes(field.text), instant.fault),
                      "write local time as 2026-05-14T08:00, or with an offset as "
                      "2026-05-14T08:00-05:00");
      return false;
    }
    hour.at = *instant.utc;
    return true;
  }

  void read_field(const ColumnKind& kind, const CsvField& field, DraftHour& hour) {
    if (field.text.empty()) return;
    if (kind.role == ColumnRole::thunder) {
      read_thunder(field, hour);
    } else {
      read_value(kind, field, hour);
    }
  }

  void read_value(const ColumnKind& kind, const CsvField& field, DraftHour& hour) {
    const std::optional<double> value = parse_number(field.text);
    if (!value) {
      findings_.error(field.where, std::string{kind.name},
                      fmt::format("{} is not a number", in_quotes(field.text)),
                      "leave the field empty where the value is missing");
    } else if (const auto fault = put(hour, kind.quantity, *value, kind.unit)) {
      findings_.error(field.where, std::string{kind.name}, *fault);
    }
  }

  void read_thunder(const CsvField& field, DraftHour& hour) {
    const std::string answer = lower_case(field.text);
    hour.thunder = answer == "yes";
    if (answer != "yes" && answer != "no") {
      findings_.error(field.where, "thunder",
                      fmt::format("got {}, expected yes, no or nothing", in_quotes(field.text)));
    }
  }

  void keep(const DraftHour& hour, const CsvRow& row) {
    if (!hours_.empty() && !follows(hour, row)) return;
    hours_.push_back(hour);
    rows_.push_back(&row);
  }

  bool follows(const DraftHour& hour, const CsvRow& row) {
    const double step_s = seconds_between(hours_.back().at, hour.at);
    if (step_s >= seconds_per_hour) return true;
    const std::string_view message = step_s == 0.0  ? "the same time as the row before"
                                     : step_s < 0.0 ? "earlier than the row before"
                                                    : "less than an hour after the row before";
    const std::string_view advice = step_s == 0.0  ? "keep one of the two rows"
                                    : step_s < 0.0 ? "put the rows in the order of time"
                                                   : "keep one row an hour";
    findings_.add({.severity = Severity::error,
                   .key = "time",
                   .message = std::string{message},
                   .where = time_field(row).where,
                   .also_where = time_field(*rows_.back()).where,
                   .next_step = std::string{advice}});
    return false;
  }

  const CsvField& time_field(const CsvRow& row) const { return row[index_of(std::nullopt)]; }

  /// The column that gives the gap's quantity; moisture may come from dew point or humidity.
  std::size_t index_of(std::optional<WeatherQuantity> quantity) const {
    const auto tells = [&](const Column& column) {
      if (!quantity) return column.kind->role == ColumnRole::time;
      if (column.kind->role != ColumnRole::value) return false;
      const bool moisture = *quantity == dew_point && column.kind->quantity == humidity;
      return moisture || column.kind->quantity == *quantity;
    };
    const auto found = std::find_if(columns_.begin(), columns_.end(), tells);
    return static_cast<std::size_t>(std::distance(columns_.begin(), found));
  }

  void report(const ForecastGap& gap) {
    const std::size_t column = index_of(gap.quantity);
    const std::size_t row = gap.quantity ? gap.before + 1 : gap.after;
    const double span_s = seconds_between(hours_[gap.before].at, hours_[gap.after].at);
    const std::string message = fmt::format(
        "no {} between {} and {}", gap.quantity ? name_of(*gap.quantity) : "row",
        clock_.weekday_time(hours_[gap.before].at), clock_.weekday_time(hours_[gap.after].at));
    const SourcePosition where = (*rows_[row])[column].where;
    std::string key{columns_[column].kind->name};
    if (span_s <= longest_filled_gap_s) {
      findings_.warning(where, std::move(key), message + ", filled from the rows around");
    } else {
      findings_.error(where, std::move(key), message + ", too long to fill",
                      "give the missing hours; up to three hours apart are filled");
    }
  }

  std::vector<Column> columns_;
  const Clock& clock_;
  ForecastClock times_;
  Findings& findings_;
  std::vector<DraftHour> hours_;
  std::vector<const CsvRow*> rows_;  ///< parallel to hours_
};

/// What the comments say about the forecast.
struct Origin {
  std::string source = "hourly table";
  std::optional<UtcTime> issued;
};

Origin read_origin(const std::vector<CsvComment>& comments, const Clock& clock,
                   Findings& findings) {
  constexpr std::string_view source_mark = "source:";
  constexpr std::string_view issued_mark = "issued:";
  constexpr std::size_t max_source = 200;
  const auto after = [](std::string_view text, std::string_view mark) {
    text.remove_prefix(mark.size());
    return text.substr(std::min(text.find_first_not_of(' '), text.size()));
  };
  Origin origin;
  for (const CsvComment& comment : comments) {
    if (comment.text.starts_with(source_mark)) {
      origin.source =
          fmt::format("hourly table, {}", printable(after(comment.text, source_mark), max_source));
    } else if (comment.text.starts_with(issued_mark)) {
      const std::string_view text = after(comment.text, issued_mark);
      const ForecastInstant instant = ForecastClock{clock.zone}.read(text);
      origin.issued = instant.utc;
      if (!instant.utc) {
        findings.error(comment.where, "issued",
                       fmt::format("{} {}", in_quotes(text), instant.fault));
      }
    }
  }
  return origin;
}

Parsed<Forecast> read_table(const CsvTable& table, const Clock& clock) {
  Findings findings;
  Origin origin = read_origin(table.comments, clock, findings);
  std::vector<Column> columns = HeaderReader{findings}.read(table.rows.front());
  if (findings.has_error()) return {std::nullopt, findings.take()};
  RowReader reader{std::move(columns), clock, findings};
  for (std::size_t i = 1; i < table.rows.size() && !findings.full(); ++i)
    reader.read(table.rows[i]);
  if (!findings.has_error()) reader.report_gaps();
  DraftForecast draft{
      .source = std::move(origin.source), .issued = origin.issued, .hours = reader.take_hours()};
  return conclude(std::move(draft), clock, std::move(findings), table.rows.front().front().where);
}

}  // namespace

bool looks_like_forecast_csv(std::string_view text) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    const std::size_t first = line.find_first_not_of(" \t\r");
    if (first != std::string_view::npos && line[first] != '#')
      return line.find(',') != std::string_view::npos || line.substr(first).starts_with("time");
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return false;
}

Parsed<Forecast> read_forecast_csv(std::string_view text, const Clock& clock) {
  Parsed<CsvTable> table = read_csv_table(text);
  if (!table.ok()) return {std::nullopt, std::move(table.diagnostics)};
  if (!table.value->rows.empty()) return read_table(*table.value, clock);
  Findings findings;
  findings.error({1, 1}, "", "no rows, expected a line of column names and the hours below it");
  return {std::nullopt, findings.take()};
}

}  // namespace slabtide
