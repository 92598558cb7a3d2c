#include "read_hand.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "job/model/limits.h"
#include "job/toml/times.h"

namespace slabtide {

namespace {

/// "A", "B" and so on, "A2" after "Z".
std::string letter_of(std::size_t index) {
  constexpr std::size_t letters = 26;
  const std::string letter(1, static_cast<char>('A' + index % letters));
  return index < letters ? letter : letter + std::to_string(index / letters + 1);
}

Hand read_hand(TableReader& table, std::size_t index) {
  Hand hand;
  hand.name = letter_of(index);
  set(hand.name, table.text("name"));
  set(hand.pace, table.number("pace", limits::paces, "of a usual hand's"));
  hand.from_min = read_time_of_day(table, "from");
  hand.to_min = read_time_of_day(table, "to");
  set(hand.simple_work, table.yes_no("simple_work"));
  if (hand.from_min && hand.from_min == hand.to_min) {
    table.error("to", "the hand would leave on arriving", "", table.where("from"));
  }
  return hand;
}

/// Names tell people apart: on lists, in the calendar.
void refuse_name(TableReader& table, const Hand& hand, const std::vector<Hand>& earlier) {
  const bool again = std::any_of(earlier.begin(), earlier.end(),
                                 [&](const Hand& other) { return other.name == hand.name; });
  if (again) {
    table.error("name", fmt::format("{} is already on the crew", hand.name),
                "add a letter, so that each knows their own list");
  }
  constexpr std::string_view unnamed = "finisher ";
  const bool taken = std::string_view(hand.name).starts_with(unnamed) &&
                     hand.name.find_first_not_of("0123456789", unnamed.size()) == std::string::npos;
  if (taken) {
    table.error("name", "that is what a hand without a name is called", "give a name or a letter");
  }
}

}  // namespace

Crew read_crew(TableReader& root) {
  Crew crew;
  std::optional<int> finishers;
  std::optional<SourcePosition> where;
  root.in_table("crew", [&](TableReader& table) {
    finishers = table.whole_number("finishers", limits::crew_sizes);
    where = table.where("finishers");
    set(crew.arrive_before_min,
        table.quantity("arrive_before", minutes_quantity, limits::arrivals_min));
  });
  set(crew.finishers, finishers);
  const auto most = static_cast<std::size_t>(finishers.value_or(limits::max_hands));
  root.in_each(
      "hand",
      [&](TableReader& table) {
        Hand hand = read_hand(table, crew.hands.size());
        refuse_name(table, hand, crew.hands);
        crew.hands.push_back(std::move(hand));
        if (finishers && crew.hands.size() == most + 1) {
          table.error("",
                      fmt::format("the crew has {} finisher{}, and this is one more hand", most,
                                  most == 1 ? "" : "s"),
                      "raise `finishers`, or leave it out to count the hands", where);
        }
      },
      Presence::optional, static_cast<std::size_t>(limits::max_hands));
  const auto hands = static_cast<int>(crew.hands.size());
  if (!finishers && hands > 0) crew.finishers = hands;
  const bool helpers_alone = hands > 0 && crew.finishers <= hands &&
                             std::all_of(crew.hands.begin(), crew.hands.end(),
                                         [](const Hand& one) { return one.simple_work; });
  if (helpers_alone) {
    root.error("hand", "all of the crew do simple work only: nobody is left to finish",
               "take `simple_work` from one, or add a hand");
  }
  return crew;
}

}  // namespace slabtide
