#include "slabtide/job/records/mix_book.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>

#include "core/rounded.h"
#include "core/utf8.h"
#include "job/toml/table_reader.h"
#include "job/toml/times.h"
#include "job/toml/toml_tree.h"

namespace slabtide {

namespace {

/// Spread of true set times around those computed for the mix as described, in the logarithm: one
/// time in ten they differ by 18 % or more on either side (ours, the spread the practice gives for
/// estimated set times).
constexpr double mix_log_deviation = 0.14;
/// Spread of one pour around its mix: batches vary by 10 % one time in ten, and observations have
/// errors (ours).
constexpr double pour_log_deviation = 0.10;
/// Spread of a site's air around its forecasts, year in, year out (ours: low ground, walls, town).
constexpr double site_deviation_k = 0.7;
/// Spread of one day's measurement around that: errors of the day's forecast and of the reading
/// (ours).
constexpr double day_deviation_k = 1.1;

constexpr Range reading_counts{0.0, 10000.0};
constexpr Range air_biases_k{-20.0, 20.0};
constexpr Range lates_min{-3000.0, 3000.0};

constexpr TomlKind book_toml{
    "mix book", "`slabtide learn` writes it; a pour that is wrong can be taken out whole"};

/// More than a firm uses in its lifetime.
constexpr std::size_t max_mixes = 2000;
constexpr std::size_t max_pours = 10000;

std::vector<double> factor_logs(const BookedMix& mix) {
  std::vector<double> logs;
  for (const BookedPour& pour : mix.pours) {
    if (pour.readings > 0) logs.push_back(std::log(pour.set_factor));
  }
  return logs;
}

double mean_of(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

/// The weight of the mean of `count` values that scatter by `of_one` around the truth, when truths
/// scatter by `of_all` around 0.
double weight_of(std::size_t count, double of_all, double of_one) {
  const double known = static_cast<double>(count) * of_all * of_all;
  return known / (known + of_one * of_one);
}

std::vector<double> read_minutes(TableReader& table) {
  std::vector<double> minutes;
  const TomlEntry* const entry = table.entry("late_min");
  if (entry == nullptr) return minutes;
  const auto* const list = std::get_if<TomlArray>(&entry->value.held);
  if (list == nullptr) {
    table.error("late_min", fmt::format("got {}, expected a list of minutes", shown(entry->value)));
    return minutes;
  }
  for (const TomlValue& value : *list) {
    const auto* const number = std::get_if<double>(&value.held);
    if (number != nullptr && lates_min.holds(*number)) {
      minutes.push_back(*number);
    } else {
      table.error_at(
          value.where, "late_min",
          fmt::format("got {}, expected minutes from {}", shown(value), shown(lates_min)));
    }
  }
  return minutes;
}

BookedPour read_pour_entry(TableReader& table) {
  BookedPour pour;
  set(pour.job, table.text("job", Presence::required));
  set(pour.site, table.text("site", Presence::required));
  set(pour.date, read_date(table, "date", Presence::required));
  set(pour.set_factor, table.number("set_factor", limits::learned_factors,
                                    "times the set times as described", Presence::required));
  set(pour.readings, table.whole_number("readings", reading_counts));
  pour.air_k = table.number("air_k", air_biases_k, "kelvin");
  pour.late_min = read_minutes(table);
  return pour;
}

}  // namespace

const BookedMix* MixBook::find(std::string_view name) const {
  const auto found = std::find_if(mixes.begin(), mixes.end(),
                                  [name](const BookedMix& mix) { return mix.name == name; });
  return found == mixes.end() ? nullptr : &*found;
}

void MixBook::put(const std::string& mix, BookedPour pour) {
  auto found = std::find_if(mixes.begin(), mixes.end(),
                            [&mix](const BookedMix& booked) { return booked.name == mix; });
  if (found == mixes.end()) found = mixes.insert(mixes.end(), BookedMix{mix, {}});
  const auto same =
      std::find_if(found->pours.begin(), found->pours.end(), [&pour](const BookedPour& other) {
        return other.job == pour.job && other.site == pour.site && other.date == pour.date;
      });
  if (same == found->pours.end()) {
    found->pours.push_back(std::move(pour));
  } else {
    *same = std::move(pour);
  }
}

std::optional<LearnedSet> learned_set(const BookedMix& mix) {
  const std::vector<double> logs = factor_logs(mix);
  if (logs.empty()) return std::nullopt;
  const double weight = weight_of(logs.size(), mix_log_deviation, pour_log_deviation);
  return LearnedSet{std::exp(weight * mean_of(logs)), static_cast<int>(logs.size()),
                    mix_log_deviation * std::sqrt(1.0 - weight)};
}

std::optional<double> set_factor_spread(const BookedMix& mix) {
  const std::vector<double> logs = factor_logs(mix);
  if (logs.size() < 2) return std::nullopt;
  const double mean = mean_of(logs);
  double squares = 0.0;
  for (const double log : logs) squares += (log - mean) * (log - mean);
  return std::sqrt(squares / (static_cast<double>(logs.size()) - 1.0));
}

std::optional<LearnedAir> learned_air(const MixBook& book, std::string_view site) {
  if (site.empty()) return std::nullopt;
  std::vector<double> over_k;
  for (const BookedMix& mix : book.mixes) {
    for (const BookedPour& pour : mix.pours) {
      if (pour.site == site && pour.air_k) over_k.push_back(*pour.air_k);
    }
  }
  if (over_k.empty()) return std::nullopt;
  const double mean_k = mean_of(over_k);
  return LearnedAir{weight_of(over_k.size(), site_deviation_k, day_deviation_k) * mean_k, mean_k,
                    static_cast<int>(over_k.size())};
}

Parsed<MixBook> read_mix_book(std::string_view text) {
  auto tree = read_toml(text, book_toml);
  if (!tree.ok()) return {std::nullopt, std::move(tree.diagnostics)};
  std::vector<Diagnostic> findings;
  TableReader root(*tree.value, "", UnitSystem::si, findings, book_toml);
  MixBook book;
  const auto read_mix = [&](TableReader& table) {
    BookedMix mix;
    set(mix.name, table.text("name", Presence::required));
    table.in_each(
        "pour", [&](TableReader& pour) { mix.pours.push_back(read_pour_entry(pour)); },
        Presence::optional, max_pours);
    if (book.find(mix.name) != nullptr) {
      table.error("name", fmt::format("the mix \"{}\" is already there", printable(mix.name)),
                  "put its pours under one name");
    }
    book.mixes.push_back(std::move(mix));
  };
  root.in_each("mix", read_mix, Presence::optional, max_mixes);
  root.refuse_the_rest();
  if (has_error(findings)) return {std::nullopt, std::move(findings)};
  return {std::move(book), std::move(findings)};
}

}  // namespace slabtide
