#include "told_cautions.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "core/text.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

/// A caution says what is wrong and, after this, what to do about it.
constexpr std::string_view between = ": ";
/// Between a zone's name and its part's.
constexpr std::string_view place_separator = ", ";
/// Zones whose short windows have a line each (ours): the rest share one.
constexpr std::size_t max_short_zones = 3;

/// Whether it can be within a word; every byte beyond ASCII is taken to be.
bool is_of_a_word(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         static_cast<unsigned char>(c) >= 0x80;
}

/// Whether the characters are no part of a longer word.
bool stands_alone(std::string_view text, std::size_t at, std::size_t size) {
  return (at == 0 || !is_of_a_word(text[at - 1])) &&
         (at + size >= text.size() || !is_of_a_word(text[at + size]));
}

/// Leaves a name out of the text, where it is no part of a longer word.
void leave_out(std::string& text, const std::string& name) {
  if (name.empty()) return;
  for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at)) {
    if (stands_alone(text, at, name.size())) {
      text.erase(at, name.size());
    } else {
      at += name.size();
    }
  }
}

/// The text without its place, its work and its numbers, and no length of time told apart from
/// another: what two cautions of one kind have in common.
std::string kind_of(const Caution& caution) {
  std::string kind = caution.text;
  leave_out(kind, caution.zone);
  leave_out(kind, caution.what);
  constexpr std::size_t half_letters = 3;  // " AM"
  constexpr std::string_view minutes = " min";
  constexpr std::string_view hours = " h  min";  // "2 h 5 min" without its figures
  for (std::size_t at = 0; at < kind.size(); ++at) {
    if (is_before_half(kind, at)) kind.erase(at, half_letters);
  }
  std::erase_if(kind, is_digit);
  for (std::size_t at = kind.find(hours); at != std::string::npos; at = kind.find(hours)) {
    kind.erase(at, hours.size() - minutes.size());
  }
  return kind;
}

/// Whether the same is to be done about both, only in another place or at another time.
bool asks_the_same(const Caution& a, const Caution& b) {
  const bool one_of_several =
      a.zone.empty() == b.zone.empty() && (!a.zone.empty() || (!a.what.empty() && !b.what.empty()));
  return a.code == b.code && a.level == b.level && one_of_several && !remedy_of(a.text).empty() &&
         kind_of(a) == kind_of(b);
}

/// "walk 2:00 PM", "walk (broom) 2:00 PM", "load 3 2:00 PM": what it has in place of the first's.
std::string place_and_time(const Caution& caution, const Caution& first, const Job& job) {
  std::string words = caution.zone;
  if (!caution.what.empty() && caution.what != first.what) {
    words = words.empty() ? caution.what : fmt::format("{} ({})", words, caution.what);
  }
  if (caution.at) words += fmt::format(" {}", day_clock(*caution.at, job));
  return words;
}

/// The text of the first, with at most `max_others` others between what is wrong and what to do.
std::string merged_text(const std::vector<const Caution*>& group, std::size_t max_others,
                        const Job& job) {
  const std::string_view text = group.front()->text;
  const std::string_view remedy = remedy_of(text);
  std::vector<std::string> places;
  for (const Caution* caution : group) {
    if (caution == group.front()) continue;
    std::string place = place_and_time(*caution, *group.front(), job);
    if (std::find(places.begin(), places.end(), place) == places.end()) {
      places.push_back(std::move(place));
    }
  }
  std::string others;
  // One left over is as short as "and 1 more".
  const bool all = places.size() <= max_others + 1;
  const std::size_t told = all ? places.size() : max_others;
  for (std::size_t i = 0; i < told; ++i) {
    others += fmt::format("{}{}", others.empty() ? "" : ", ", places[i]);
  }
  if (!all) others += fmt::format(" and {} more", places.size() - told);
  if (others.empty()) return std::string(text);
  return fmt::format("{}; also {}{}", text.substr(0, text.size() - remedy.size()), others, remedy);
}

/// The job's zone that the place is in, or is; empty for none of them.
std::string_view zone_of_place(std::string_view place, const Job& job) {
  std::string_view found;
  for (const Zone& zone : job.zones) {
    const bool is_in = place.starts_with(zone.name) &&
                       (place.size() == zone.name.size() ||
                        place.substr(zone.name.size()).starts_with(place_separator));
    if (is_in && zone.name.size() > found.size()) found = zone.name;
  }
  return found;
}

/// "38 min for the first edge, outer strip, from 11:05 AM", of the same zone as `first`; of another
/// "walk 38 min (first edge) from 11:05 AM".
std::string window_words(const Caution& window, const Caution& first, const Job& job) {
  const std::string_view zone = zone_of_place(window.zone, job);
  const int minutes = static_cast<int>(std::lround(*window.window_min));
  const std::string from = window.at ? " from " + day_clock(*window.at, job) : std::string();
  if (zone != zone_of_place(first.zone, job)) {
    return fmt::format("{} {} min ({}){}", window.zone, minutes, window.what, from);
  }
  std::string part;
  if (window.zone != first.zone && window.zone.size() > zone.size()) {
    part = window.zone.substr(zone.size()) + ",";
  }
  return fmt::format("{} min for the {}{}{}", minutes, window.what, part, from);
}

/// "only 29 min for the broom from 11:20 AM, 38 min for the first edge from 11:05 AM: have ...":
/// the tightest as it is told alone, then at most `max_others` others, and what to do.
std::string windows_text(const std::vector<const Caution*>& group, std::size_t max_others,
                         const Job& job) {
  const std::string_view text = group.front()->text;
  const std::string_view remedy = remedy_of(text);
  std::string words(text.substr(0, text.size() - remedy.size()));
  const std::size_t others = group.size() - 1;
  const std::size_t told = others <= max_others + 1 ? others : max_others;
  for (std::size_t i = 1; i <= told; ++i) {
    words += ", " + window_words(*group[i], *group.front(), job);
  }
  if (told < others) words += fmt::format(" and {} more", others - told);
  return words + std::string(remedy);
}

using Group = std::vector<const Caution*>;

/// Short windows a zone each, the tightest first in the zone and among the zones; those of more
/// than `max_short_zones` zones together in the last group.
std::vector<Group> short_windows(const std::vector<Caution>& cautions, const Job& job) {
  std::vector<const Caution*> all;
  for (const Caution& caution : cautions) {
    if (caution.window_min) all.push_back(&caution);
  }
  std::stable_sort(all.begin(), all.end(), [](const Caution* a, const Caution* b) {
    return std::lround(*a->window_min) < std::lround(*b->window_min);
  });
  std::vector<Group> groups;
  for (const Caution* window : all) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
      const std::string_view zone = zone_of_place(window->zone, job);
      return window->level == group.front()->level &&
             (zone.empty() ? window->zone == group.front()->zone
                           : zone == zone_of_place(group.front()->zone, job));
    });
    if (same == groups.end()) {
      groups.push_back({window});
    } else {
      same->push_back(window);
    }
  }
  for (std::size_t i = max_short_zones + 1; i < groups.size(); ++i) {
    Group& last = groups[max_short_zones];
    last.insert(last.end(), groups[i].begin(), groups[i].end());
  }
  if (groups.size() > max_short_zones + 1) groups.resize(max_short_zones + 1);
  return groups;
}

/// Those that ask for the same, in the order of the first of each.
std::vector<Group> grouped(const std::vector<Caution>& cautions, const Job& job) {
  std::vector<Group> groups;
  bool windows_told = false;
  for (const Caution& caution : cautions) {
    if (caution.window_min) {
      if (windows_told) continue;
      windows_told = true;
      for (Group& group : short_windows(cautions, job)) groups.push_back(std::move(group));
      continue;
    }
    const auto same = std::find_if(groups.begin(), groups.end(), [&caution](const Group& group) {
      return !group.front()->window_min && asks_the_same(*group.front(), caution);
    });
    if (same == groups.end()) {
      groups.push_back({&caution});
    } else {
      same->push_back(&caution);
    }
  }
  return groups;
}

bool is_worse(const ToldCaution& a, const ToldCaution& b) {
  if (a.first->level != b.first->level) return a.first->level > b.first->level;
  return a.first->loss < b.first->loss;
}

}  // namespace

std::string_view remedy_of(std::string_view text) {
  const std::size_t at = text.find(between);
  return at == std::string_view::npos ? std::string_view() : text.substr(at);
}

std::vector<ToldCaution> told_cautions(const std::vector<Caution>& cautions, const Job& job,
                                       std::size_t max_others) {
  std::vector<ToldCaution> told;
  for (const Group& group : grouped(cautions, job)) {
    std::vector<std::size_t> indexes;
    for (const Caution* one : group) {
      indexes.push_back(static_cast<std::size_t>(one - cautions.data()));
    }
    const Caution* first = group.front();
    std::string text = first->window_min ? windows_text(group, max_others, job)
                                         : merged_text(group, max_others, job);
    told.push_back({std::move(indexes), first, first->zone, std::move(text), false});
  }
  std::stable_sort(told.begin(), told.end(), is_worse);
  std::size_t count = 0;
  for (ToldCaution& each : told) {
    each.at_once = each.first->level != CautionLevel::note && count < max_told_cautions;
    if (each.at_once) ++count;
  }
  return told;
}

}  // namespace slabtide
