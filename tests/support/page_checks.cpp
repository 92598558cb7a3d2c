#include "support/page_checks.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <map>
#include <regex>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <boost/date_time/gregorian/gregorian.hpp>
#include <nlohmann/json.hpp>

#include "core/utf8.h"

namespace slabtide::test {

namespace {

using Json = nlohmann::json;

std::string replaced(std::string text, std::string_view what, std::string_view by) {
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size())) {
    text.replace(at, what.size(), by);
  }
  return text;
}

/// Decodes the character references used in our markup; a non-breaking space becomes a plain one,
/// a word joiner goes.
std::string decoded(std::string text) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 9> references{
      {{"\u00a0", " "},
       {"\u2060", ""},
       {"&nbsp;", " "},
       {"&lt;", "<"},
       {"&gt;", ">"},
       {"&quot;", "\""},
       {"&#39;", "'"},
       {"&apos;", "'"},
       {"&amp;", "&"}}};
  for (const auto& [reference, character] : references) {
    text = replaced(std::move(text), reference, character);
  }
  return text;
}

/// Something on the page with a JSON pointer.
struct Item {
  std::string tag;
  std::map<std::string, std::string> attributes;
  std::string text;
};

std::map<std::string, std::string> attributes_in(std::string_view tag) {
  std::map<std::string, std::string> attributes;
  for (std::size_t at = tag.find("=\""); at != std::string_view::npos; at = tag.find("=\"", at)) {
    std::size_t name_from = at;
    while (name_from > 0 && (is_word(tag[name_from - 1]) || tag[name_from - 1] == '-')) --name_from;
    const std::size_t end = tag.find('"', at + 2);
    const std::string value(tag.substr(at + 2, end - at - 2));
    attributes[std::string(tag.substr(name_from, at - name_from))] = decoded(value);
    at = end == std::string_view::npos ? end : end + 1;
  }
  return attributes;
}

/// The text inside an element that opens at `from`, without tags.
std::string text_inside(std::string_view page, std::size_t from, const std::string& tag) {
  const std::string opening = "<" + tag;
  const std::string closing = "</" + tag + ">";
  std::string text;
  int depth = 1;
  for (std::size_t at = from; at < page.size();) {
    if (page[at] != '<') {
      text += page[at++];
      continue;
    }
    if (page.substr(at, closing.size()) == closing && --depth == 0) break;
    const bool same =
        page.substr(at, opening.size()) == opening && !is_word(after(page, at + opening.size()));
    const std::size_t end = page.find('>', at);
    if (end == std::string_view::npos) break;
    if (same && page[end - 1] != '/') ++depth;
    at = end + 1;
  }
  return decoded(text);
}

std::vector<Item> items_on(std::string_view page) {
  constexpr std::string_view mark = " data-json=\"";
  std::vector<Item> items;
  for (auto at = page.find(mark); at != std::string_view::npos; at = page.find(mark, at + 1)) {
    const std::size_t from = page.rfind('<', at);
    const std::size_t end = page.find('>', at);
    if (from == std::string_view::npos || end == std::string_view::npos) break;
    std::size_t name_end = from + 1;
    while (is_word(page[name_end])) ++name_end;
    Item item{std::string(page.substr(from + 1, name_end - from - 1)),
              attributes_in(page.substr(from, end - from)),
              {}};
    if (page[end - 1] != '/') item.text = text_inside(page, end + 1, item.tag);
    items.push_back(std::move(item));
  }
  return items;
}

/// Converts a value from the JSON's SI unit to the unit shown. Factors: exact definitions (NIST SP
/// 811).
double shown_in(double value, const std::string& unit) {
  constexpr double foot = 0.3048;
  constexpr double pound = 0.45359237;
  static const std::map<std::string, double> factors{{"ft²", 1.0 / (foot * foot)},
                                                     {"yd³", 1.0 / (0.9144 * 0.9144 * 0.9144)},
                                                     {"in", 1.0 / 0.0254},
                                                     {"ft", 1.0 / foot},
                                                     {"lb/ft²/h", foot * foot / pound},
                                                     {"mph", 3600.0 / 1609.344},
                                                     {"lb", 1.0 / pound},
                                                     {"gal", 1.0 / 3.785411784},
                                                     {"%", 100.0},
                                                     {"mm", 1000.0}};
  if (unit == "°F") return value * 1.8 + 32.0;
  const auto found = factors.find(unit);
  return found == factors.end() ? value : value * found->second;
}

bool is_supply(const std::string& pointer) {
  return pointer.starts_with("/supplies/") &&
         (pointer.ends_with("/amount_kg") || pointer.ends_with("/amount_l") ||
          pointer.ends_with("/amount_m2"));
}

/// Why the figure shown differs from the one in the JSON.
std::string figure_fault(const Item& item, const std::string& pointer, double value) {
  static const std::regex form(R"((-?[0-9.]+)\s*(.*))");
  std::smatch match;
  if (!std::regex_match(item.text, match, form)) return "no figure";
  if (std::strtod(item.attributes.at("value").c_str(), nullptr) != value) return "another value";
  // Minutes as a person says them.
  static const std::regex hours(R"((\d+) h(?: (\d+) min)?)");
  std::smatch span;
  if (pointer.ends_with("_min") && std::regex_match(item.text, span, hours)) {
    const double minutes = 60.0 * std::stod(span[1]) + (span[2].matched ? std::stod(span[2]) : 0.0);
    return std::abs(minutes - value) <= 0.5 + 1e-9 ? "" : "another figure";
  }
  const std::string digits = match[1];
  const std::string unit = match[2];
  constexpr double json_step = 0.01;
  const double expected = shown_in(value, unit);
  const double from_json = std::abs(shown_in(value + json_step / 2, unit) - expected);
  const double shown = std::strtod(digits.c_str(), nullptr);
  if (is_supply(pointer)) {
    // Amounts to take along are rounded up, so that they are enough.
    const bool enough = shown >= expected - from_json && shown < expected + 1 + from_json;
    return enough ? "" : "not enough, or too much";
  }
  const std::size_t point = digits.find('.');
  const auto decimals =
      point == std::string::npos ? 0.0 : static_cast<double>(digits.size() - point - 1);
  constexpr double eighth_of_an_inch = 2.0;  // the resolution at which inches are shown
  const double half_digit = 0.5 * std::pow(10.0, -(unit == "in" ? eighth_of_an_inch : decimals));
  return std::abs(shown - expected) <= half_digit + from_json + 1e-9 ? "" : "another figure";
}

/// How a page's clock counts the hours.
enum class Face { twelve, twenty_four };

std::string on_face(const std::string& clock, Face face) {
  if (face == Face::twenty_four) return clock;
  const int hour = std::stoi(clock.substr(0, 2));
  const int shown = hour % 12 == 0 ? 12 : hour % 12;
  return fmt::format("{}{} {}", shown, clock.substr(2), hour < 12 ? "AM" : "PM");
}

/// "Fri 06:10" on another day than the pour's, "06:10" on the day itself; or "Fri 6:10 AM".
std::string clock_words(const std::string& time, const std::string& date, Face face) {
  constexpr std::array<std::string_view, 7> days{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  const std::string clock = on_face(time.substr(11, 5), face);
  if (time.substr(0, 10) == date) return clock;
  const auto day = boost::gregorian::from_simple_string(time.substr(0, 10)).day_of_week();
  return fmt::format("{} {}", days.at(day.as_number()), clock);
}

/// A text of the JSON as a page shows it; in the JSON names are unchanged.
std::string as_shown(const std::string& text) {
  return replaced(printable_lines(text), "\u00a0", " ");
}

/// Whether this is the clock, or the clock with what the time is called in an hour that comes
/// twice: "1:30 AM EDT".
bool is_clock(std::string_view text, std::string_view clock) {
  if (!text.starts_with(clock)) return false;
  const std::string_view name = text.substr(clock.size());
  return name.empty() || (name.front() == ' ' && name.size() >= 3 && name.size() <= 6 &&
                          name.substr(1).find_first_not_of(
                              "ABCDEFGHIJKLMNOPQRSTUVWXYZ+-0123456789") == std::string_view::npos);
}

/// The time of an item as its markup has it; empty for a figure or a text.
std::string time_of(const Item& item) {
  for (const char* const key : {"datetime", "data-time"}) {
    const auto time = item.attributes.find(key);
    if (time != item.attributes.end()) return time->second;
  }
  return {};
}

bool are_of_one_day(const Item& one, const Item& other) {
  return time_of(one).substr(0, 10) == time_of(other).substr(0, 10);
}

/// Whether this is the clock without its AM or PM, which the next time, right after it on the same
/// day, says for both.
bool begins_span(const Item& item, const std::string& clock, const Item* next) {
  return next != nullptr && (clock.ends_with(" AM") || clock.ends_with(" PM")) &&
         are_of_one_day(item, *next) && next->text.ends_with(clock.substr(clock.size() - 3)) &&
         item.text == clock.substr(0, clock.size() - 3);
}

/// Whether this is the clock without its weekday, which the time right before it says for both.
bool ends_span(const Item& item, const std::string& clock, const Item* before) {
  constexpr std::size_t weekday_size = 4;
  return before != nullptr && std::isupper(static_cast<unsigned char>(clock.front())) != 0 &&
         are_of_one_day(*before, item) && is_clock(item.text, clock.substr(weekday_size));
}

/// One for all times on a page.
Face face_of(const std::vector<Item>& items) {
  const bool twelve = std::any_of(items.begin(), items.end(), [](const Item& item) {
    return item.text.ends_with(" AM") || item.text.ends_with(" PM");
  });
  return twelve ? Face::twelve : Face::twenty_four;
}

/// An item and those right before and after it, if there are any.
struct Placed {
  const Item& item;
  const Item* before;
  const Item* next;
};

std::string item_fault(const Placed& placed, const Json& plan, Face face) {
  const Item& item = placed.item;
  const std::string& pointer = item.attributes.at("data-json");
  const Json::json_pointer at(pointer);
  if (!plan.contains(at) || plan.at(at).is_null()) return "not in the JSON";
  const Json& value = plan.at(at);
  const std::string time = time_of(item);
  if (!time.empty()) {
    if (time != value) return "another time";
    const std::string clock = clock_words(value, plan["job"]["date"], face);
    const bool is_shown = is_clock(item.text, clock) || begins_span(item, clock, placed.next) ||
                          ends_span(item, clock, placed.before);
    return is_shown ? "" : "another clock";
  }
  if (item.tag == "data") return figure_fault(item, pointer, value.get<double>());
  return value.is_string() && item.text == as_shown(value) ? "" : "another text";
}

}  // namespace

std::vector<std::string> page_faults(std::string_view page, std::string_view plan_json) {
  const Json plan = Json::parse(plan_json);
  const std::vector<Item> items = items_on(page);
  if (items.empty()) return {"the page points nowhere"};
  std::vector<std::string> faults;
  const Face face = face_of(items);
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Item& item = items[i];
    const Placed placed{item, i > 0 ? &items[i - 1] : nullptr,
                        i + 1 < items.size() ? &items[i + 1] : nullptr};
    const std::string fault = item_fault(placed, plan, face);
    if (fault.empty()) continue;
    const std::string& pointer = item.attributes.at("data-json");
    faults.push_back(fmt::format("{}: {}: '{}'", pointer, fault, item.text));
  }
  return faults;
}

}  // namespace slabtide::test
