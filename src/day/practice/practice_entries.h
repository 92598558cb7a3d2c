#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

namespace slabtide {

/// An entry of the file and where its value is stored: a number, a whole number, or true or false.
struct PracticeEntry {
  std::string path;
  std::variant<double*, int*, bool*> to;
  double min = 0.0;
  double max = 0.0;

  bool is_flag() const { return std::holds_alternative<bool*>(to); }
  bool is_count() const { return std::holds_alternative<int*>(to); }
  double number() const {
    return std::visit([](const auto* held) { return static_cast<double>(*held); }, to);
  }
  bool holds(double value) const {
    return value >= min && value <= max && !(is_count() && value != std::floor(value));
  }
  std::string expected() const {
    return fmt::format("{} from {} to {}", is_count() ? "a whole number" : "a number", min, max);
  }
};

/// Two entries, the first of which must stay below the second.
struct OrderedEntries {
  std::string lower;
  std::string upper;
  bool may_be_equal = false;
};

/// All entries of a practice file. Reading, checking and suggestions use this list.
struct PracticeEntries {
  std::vector<PracticeEntry> list;
  std::vector<OrderedEntries> pairs;

  void number(std::string path, double& to, double min, double max) {
    list.push_back({std::move(path), &to, min, max});
  }
  void count(std::string path, int& to, double min, double max) {
    list.push_back({std::move(path), &to, min, max});
  }
  void flag(std::string path, bool& to) { list.push_back({std::move(path), &to}); }
  /// Requires the last two entries to be in order.
  void in_order(bool may_be_equal = false) {
    pairs.push_back({list[list.size() - 2].path, list.back().path, may_be_equal});
  }
  const PracticeEntry* find(std::string_view path) const {
    const auto found = std::find_if(list.begin(), list.end(), [path](const PracticeEntry& entry) {
      return entry.path == path;
    });
    return found == list.end() ? nullptr : &*found;
  }
  std::string order_fault(const OrderedEntries& pair) const {
    const double lower = find(pair.lower)->number();
    const double upper = find(pair.upper)->number();
    if (lower < upper || (pair.may_be_equal && lower <= upper)) return {};
    return fmt::format("got {}, expected {} {} ({})", lower,
                       pair.may_be_equal ? "at most" : "less than", upper, pair.upper);
  }
};

}  // namespace slabtide
