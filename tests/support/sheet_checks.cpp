#include "support/sheet_checks.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <vector>

#include <fmt/format.h>
#include <boost/date_time/gregorian/gregorian.hpp>
#include <nlohmann/json.hpp>

#include "core/utf8.h"

namespace slabtide::test {

namespace {

using Json = nlohmann::json;

std::string around(std::string_view text, std::size_t at) {
  constexpr std::size_t context = 60;
  const std::size_t from = at < context ? 0 : at - context;
  return std::string(text.substr(from, 2 * context));
}

bool is_word(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

char before(std::string_view text, std::size_t at) { return at == 0 ? ' ' : text[at - 1]; }
char after(std::string_view text, std::size_t at) { return at < text.size() ? text[at] : ' '; }

/// The "M" in "M-0 12": a letter that starts a command in the data of a path.
bool is_path_letter(std::string_view text, std::size_t at) {
  constexpr std::string_view letters = "MLHVCSQTA";
  return letters.find(text[at]) != std::string_view::npos && !is_word(before(text, at));
}

/// True for "-0", "-0.0" and so on as a separate number.
bool is_negative_zero(std::string_view text, std::size_t at) {
  const char left = before(text, at);
  const bool in_path = at > 0 && is_path_letter(text, at - 1);
  if (!in_path && (is_word(left) || left == '-' || left == '.' || left == ')')) return false;
  std::size_t end = at + 1;
  while (end < text.size() && text[end] == '0') ++end;
  if (end == at + 1) return false;
  if (after(text, end) == '.' && after(text, end + 1) == '0') {
    for (++end; end < text.size() && text[end] == '0';) ++end;
  }
  const char right = after(text, end);
  if (right == '.') return std::isdigit(static_cast<unsigned char>(after(text, end + 1))) == 0;
  return !is_word(right) && right != ':';
}

/// True for "-5 min", but not for "10-5 min" or for a hyphen within a word.
bool is_negative_span(std::string_view text, std::size_t at) {
  const char left = before(text, at);
  if (left != ' ' && left != '(' && left != '>' && left != '\n') return false;
  std::size_t end = at + 1;
  while (std::isdigit(static_cast<unsigned char>(after(text, end))) != 0) ++end;
  return end > at + 1 && text.substr(end, 4) == " min" && !is_word(after(text, end + 4));
}

/// `text` without what is between these tags.
std::string without(std::string text, std::string_view tag) {
  const std::string opening = fmt::format("<{}", tag);
  const std::string closing = fmt::format("</{}>", tag);
  for (auto from = text.find(opening); from != std::string::npos; from = text.find(opening, from)) {
    const auto to = text.find(closing, from);
    text.erase(from, to == std::string::npos ? to : to + closing.size() - from);
  }
  return text;
}

// --- the plan's JSON -------------------------------------------------------------------------

/// A time with its offset as minutes; its seconds are always none.
std::optional<long> instant_min(const Json& time) {
  if (!time.is_string()) return std::nullopt;
  const std::string text = time.get<std::string>();
  const auto day = boost::gregorian::from_simple_string(text.substr(0, 10)).day_number();
  const auto number = [&text](std::size_t at) { return std::stol(text.substr(at, 2)); };
  const long local = static_cast<long>(day) * 1440 + number(11) * 60 + number(14);
  constexpr std::size_t sign_at = 19;
  if (text.size() <= sign_at || text[sign_at] == 'Z') return local;
  const long offset = number(sign_at + 1) * 60 + number(sign_at + 4);
  return text[sign_at] == '-' ? local + offset : local - offset;
}

/// The plan leaves out what is absent: here it becomes null, or an empty text, to be asked for.
void add_absent(Json& json) {
  static constexpr std::array names{"arrives",
                                    "batched",
                                    "border",
                                    "closes",
                                    "closes_band",
                                    "crew",
                                    "due",
                                    "early",
                                    "empty",
                                    "end",
                                    "faces",
                                    "final_set_band",
                                    "initial_set_band",
                                    "sheen_gone_band",
                                    "final_set",
                                    "initial_set",
                                    "joints",
                                    "late",
                                    "late_min",
                                    "latest",
                                    "leaves",
                                    "likely",
                                    "open_all_over",
                                    "open_all_over_band",
                                    "opens",
                                    "opens_band",
                                    "operation",
                                    "parts",
                                    "peak_evaporation_at",
                                    "surface_peak_at",
                                    "placed",
                                    "saw",
                                    "saw_windows",
                                    "sawing",
                                    "sheen_gone",
                                    "start",
                                    "starts",
                                    "tasks",
                                    "trucks",
                                    "windows",
                                    "zones"};
  for (Json& member : json) {
    if (member.is_structured()) add_absent(member);
  }
  if (!json.is_object()) return;
  for (const char* name : names) json.emplace(name, nullptr);
  for (const char* text : {"name", "note", "part", "task", "zone"}) json.emplace(text, "");
}

class OrderCheck {
 public:
  explicit OrderCheck(const Json& plan) : plan_(plan) {}

  std::vector<std::string> faults() {
    for (const Json& zone : plan_["zones"]) check_zone(zone);
    for (const Json& truck : plan_["trucks"]) check_truck(truck);
    for (const Json& member : plan_["crew"]) check_member(member);
    for (const Json& cut : plan_["saw"]) check_cut(cut);
    for (const Json& zone : plan_["zones"]) check_sawing(zone);
    return std::move(faults_);
  }

 private:
  void rise(const std::string& what, const Json& earlier, const Json& later) {
    const auto a = instant_min(earlier);
    const auto b = instant_min(later);
    if (a && b && *a > *b)
      say(fmt::format("{}: {} is after {}", what, earlier.dump(), later.dump()));
  }

  void say(std::string fault) { faults_.push_back(std::move(fault)); }

  void check_band(const std::string& what, const Json& band) {
    if (band.is_null()) return;
    rise(what + " early, likely", band["early"], band["likely"]);
    rise(what + " likely, late", band["likely"], band["late"]);
  }

  static const Json* window_of(const Json& part, const std::string& operation) {
    for (const Json& window : part["windows"]) {
      if (window["operation"] == operation) return &window;
    }
    return nullptr;
  }

  static const Json* named(const Json& list, const std::string& name) {
    for (const Json& one : list) {
      if (one["name"] == name) return &one;
    }
    return nullptr;
  }

  static bool waits_for_set(const std::string& operation) {
    return operation == "walk" || operation == "wash" || operation == "seal";
  }

  void check_window(const std::string& name, const Json& window, const Json& part) {
    const std::string operation = window["operation"];
    const std::string what = fmt::format("{}, {}", name, operation);
    rise(what + " opens, open all over", window["opens"], window["open_all_over"]);
    check_band(what + " opens", window["opens_band"]);
    check_band(what + " open all over", window["open_all_over_band"]);
    check_band(what + " closes", window["closes_band"]);
    // A window that is too late when it opens, or opens under bleed water, has a note that says so.
    if (window["note"].get<std::string>().empty()) {
      rise(what + " opens, closes", window["opens"], window["closes"]);
      if (operation != "strip") {
        rise(what + " after the sheen", part["sheen_gone"], window["open_all_over"]);
      }
    }
    if (waits_for_set(operation)) {
      // A part begins to set when its first tenth sets, and has set when nine tenths have.
      rise(what + " after initial set", part["initial_set"], window["opens"]);
      rise(what + " after final set", part["final_set"], window["open_all_over"]);
      if (part["final_set"].is_null() && !window["open_all_over"].is_null()) {
        say(what + " without a set");
      }
    }
  }

  void check_part(const std::string& name, const Json& part) {
    rise(name + " set times", part["initial_set"], part["final_set"]);
    rise(name + " sheen, final set", part["sheen_gone"], part["final_set"]);
    for (const char* time : {"sheen_gone", "initial_set", "final_set"}) {
      check_band(fmt::format("{} {}", name, time), part[std::string(time) + "_band"]);
    }
    for (const Json& window : part["windows"]) check_window(name, window, part);
  }

  void check_zone(const Json& zone) {
    const std::string name = zone["name"];
    rise(name + " placed", zone["placed"]["start"], zone["placed"]["end"]);
    rise(name + " set after placing began", zone["placed"]["start"], zone["initial_set"]);
    check_part(name, zone);
    for (const char* peak : {"peak_evaporation_at", "surface_peak_at"}) {
      rise(name + " peaks after placing began", zone["placed"]["start"], zone[peak]);
    }
    for (const Json& part : zone["parts"]) {
      check_part(fmt::format("{}, {}", name, part["name"].get<std::string>()), part);
    }
    if (!zone["border"].is_null()) check_part(name + ", border", zone["border"]);
    for (const Json& face : zone["faces"]) check_window(name, face["windows"][0], zone);
  }

  void check_truck(const Json& truck) {
    rise("truck batched, arrives", truck["batched"], truck["arrives"]);
    rise("truck arrives, starts", truck["arrives"], truck["starts"]);
    rise("truck starts, empty", truck["starts"], truck["empty"]);
  }

  void check_member(const Json& member) {
    rise("crew arrives, leaves", member["arrives"], member["leaves"]);
    for (const Json& task : member["tasks"]) {
      rise("crew arrives, works", member["arrives"], task["start"]);
      rise("task starts, ends", task["start"], task["end"]);
      if (const Json* zone = named(plan_["zones"], task["zone"])) check_task(task, *zone);
    }
  }

  void check_task(const Json& task, const Json& zone) {
    const std::string kind = task["task"];
    if (kind == "wash" || kind == "seal") return check_next_day(task, zone);
    if (kind == "strip_face") return;
    const std::string part_name = task["part"];
    const Json* part = part_name.empty()       ? &zone
                       : part_name == "border" ? &zone["border"]
                                               : named(zone["parts"], part_name);
    const Json* window = part == nullptr ? nullptr : window_of(*part, kind);
    if (window == nullptr) return;  // screeding, saw, covers
    const std::string what = fmt::format("{}, {}, {}", zone["name"].dump(), part_name, kind);
    rise(what + " begun after it opens", (*window)["opens"], task["start"]);
    const bool in_time = task["late_min"] == 0 && !(*window)["closes"].is_null();
    if (in_time) {
      rise(what + " ended before feet", task["end"], (*window_of(*part, "walk"))["open_all_over"]);
    }
  }

  void check_next_day(const Json& task, const Json& zone) {
    const std::string what = fmt::format("{}, {}", zone["name"].dump(), task["task"].dump());
    rise(what + " after final set", zone["final_set"], task["start"]);
    if (const Json* window = window_of(zone, task["task"])) {
      rise(what + " after it opens", (*window)["opens"], task["start"]);
    }
    if (zone["border"].is_null()) return;
    rise(what + " after the border's set", zone["border"]["final_set"], task["start"]);
    if (zone["border"]["final_set"].is_null()) say(what + " on a border that does not set");
  }

  void check_cut(const Json& cut) {
    if (!cut["late"].get<bool>()) rise("saw starts, latest", cut["starts"], cut["latest"]);
  }

  /// The earliest `time` of the zone's cuts with this saw, or with any where none is named.
  Json first_of_cuts(const Json& zone, const char* time, const Json& operation) const {
    Json first;
    for (const Json& cut : plan_["saw"]) {
      if (cut["zone"] != zone["name"] || cut[time].is_null()) continue;
      if (!operation.is_null() && cut["operation"] != operation) continue;
      if (first.is_null() || *instant_min(cut[time]) < *instant_min(first)) first = cut[time];
    }
    return first;
  }

  /// What is said of the saw in a zone is what its list of cuts says.
  void check_sawing(const Json& zone) {
    const Json& sawing = zone["joints"]["sawing"];
    const std::string name = zone["name"].dump();
    const auto namesakes =
        std::count_if(plan_["zones"].begin(), plan_["zones"].end(),
                      [&](const Json& one) { return one["name"] == zone["name"]; });
    if (namesakes > 1) return;
    if (sawing.is_null()) {
      if (!first_of_cuts(zone, "latest", {}).is_null()) say(name + " is cut, but no saw is named");
      if (!zone["saw_windows"].empty()) say(name + " has a window for a saw, but no cut");
      return;
    }
    const Json due = first_of_cuts(zone, "latest", {});
    if (sawing["due"] != due) say(name + ": the first cut due is another");
    if (sawing["starts"] != first_of_cuts(zone, "starts", sawing["operation"])) {
      say(name + ": the first cut starts at another time");
    }
    for (const Json& saw : zone["saw_windows"]) {
      if (saw["latest"] != due) say(name + ": its saw window closes at another time");
    }
  }

  const Json& plan_;
  std::vector<std::string> faults_;
};

// --- the page --------------------------------------------------------------------------------

std::string replaced(std::string text, std::string_view what, std::string_view by) {
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size())) {
    text.replace(at, what.size(), by);
  }
  return text;
}

/// Decodes the character references used in our markup; a non-breaking space becomes a plain one.
std::string decoded(std::string text) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 8> references{
      {{"\u00a0", " "},
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

/// One for all times on a page.
Face face_of(const std::vector<Item>& items) {
  const bool twelve = std::any_of(items.begin(), items.end(), [](const Item& item) {
    return item.text.ends_with(" AM") || item.text.ends_with(" PM");
  });
  return twelve ? Face::twelve : Face::twenty_four;
}

std::string item_fault(const Item& item, const Json& plan, Face face) {
  const std::string& pointer = item.attributes.at("data-json");
  const Json::json_pointer at(pointer);
  if (!plan.contains(at) || plan.at(at).is_null()) return "not in the JSON";
  const Json& value = plan.at(at);
  const auto time =
      item.attributes.find(item.attributes.contains("datetime") ? "datetime" : "data-time");
  if (time != item.attributes.end()) {
    if (time->second != value) return "another time";
    const std::string clock = clock_words(value, plan["job"]["date"], face);
    return is_clock(item.text, clock) ? "" : "another clock";
  }
  if (item.tag == "data") return figure_fault(item, pointer, value.get<double>());
  return value.is_string() && item.text == as_shown(value) ? "" : "another text";
}

}  // namespace

std::vector<std::string> number_faults(std::string_view whole) {
  const std::string text = without(without(std::string(whole), "style"), "script");
  std::vector<std::string> faults;
  for (std::size_t at = text.find("-0"); at != std::string::npos; at = text.find("-0", at + 1)) {
    if (is_negative_zero(text, at)) faults.push_back("-0 in: " + around(text, at));
  }
  for (std::size_t at = text.find('-'); at != std::string::npos; at = text.find('-', at + 1)) {
    if (is_negative_span(text, at)) faults.push_back("under zero: " + around(text, at));
  }
  for (const std::string_view none : {"nan", "inf"}) {
    for (std::size_t at = text.find(none); at != std::string::npos; at = text.find(none, at + 1)) {
      if (is_word(before(text, at)) || is_word(after(text, at + none.size()))) continue;
      faults.push_back(fmt::format("{} in: {}", none, around(text, at)));
    }
  }
  return faults;
}

std::vector<std::string> order_faults(std::string_view plan_json) {
  Json plan = Json::parse(plan_json);
  add_absent(plan);
  return OrderCheck(plan).faults();
}

std::vector<std::string> page_faults(std::string_view page, std::string_view plan_json) {
  const Json plan = Json::parse(plan_json);
  const std::vector<Item> items = items_on(page);
  if (items.empty()) return {"the page points nowhere"};
  std::vector<std::string> faults;
  for (const Item& item : items) {
    const std::string fault = item_fault(item, plan, face_of(items));
    if (fault.empty()) continue;
    const std::string& pointer = item.attributes.at("data-json");
    faults.push_back(fmt::format("{}: {}: '{}'", pointer, fault, item.text));
  }
  return faults;
}

}  // namespace slabtide::test
