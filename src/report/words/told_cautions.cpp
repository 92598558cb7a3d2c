#include "told_cautions.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "core/text.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

/// A caution says what is wrong and, after this, what to do about it.
constexpr std::string_view between = ": ";

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
  std::vector<std::vector<const Caution*>> groups;
  for (const Caution& caution : cautions) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&caution](const auto& group) {
      return asks_the_same(*group.front(), caution);
    });
    if (same == groups.end()) {
      groups.push_back({&caution});
    } else {
      same->push_back(&caution);
    }
  }
  std::vector<ToldCaution> told;
  for (const auto& group : groups) {
    std::vector<std::size_t> indexes;
    for (const Caution* one : group) {
      indexes.push_back(static_cast<std::size_t>(one - cautions.data()));
    }
    const Caution* first = group.front();
    told.push_back(
        {std::move(indexes), first, first->zone, merged_text(group, max_others, job), false});
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
