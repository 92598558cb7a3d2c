#include "support/order_checks.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>
#include <boost/date_time/gregorian/gregorian.hpp>
#include <nlohmann/json.hpp>

namespace slabtide::test {

namespace {

using Json = nlohmann::json;

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
    return operation == "walk" || operation == "expose" || operation == "wash" ||
           operation == "seal";
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
    if (kind == "expose") {  // the one work on what has set
      rise(what + " after final set", (*part)["final_set"], task["start"]);
      return;
    }
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
    check_crew_saws(zone);
    for (const Json& saw : zone["saw_windows"]) {
      if (saw["latest"] != due) say(name + ": its saw window closes at another time");
    }
  }

  /// Whoever saws is at it when the zone's first cut is made.
  void check_crew_saws(const Json& zone) {
    const Json& sawing = zone["joints"]["sawing"];
    if (zone["joints"]["way"] != sawing["operation"]) return;
    Json first;
    for (const Json& member : plan_["crew"]) {
      for (const Json& task : member["tasks"]) {
        if (task["task"] != "saw" || task["zone"] != zone["name"]) continue;
        if (first.is_null() || *instant_min(task["start"]) < *instant_min(first)) {
          first = task["start"];
        }
      }
    }
    if (first != sawing["starts"]) {
      say(zone["name"].dump() + ": the crew saws at another time than the cut list has");
    }
  }

  const Json& plan_;
  std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> order_faults(std::string_view plan_json) {
  Json plan = Json::parse(plan_json);
  add_absent(plan);
  return OrderCheck(plan).faults();
}

}  // namespace slabtide::test
