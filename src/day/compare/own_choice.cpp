#include "own_choice.h"

#include <fmt/format.h>

namespace slabtide {

void add_own_choice(const OptionNote& note, ChoiceList& list) {
  list.offer({ChoiceKind::own, note.name, note.name,
              fmt::format("take your own option '{}'", note.name), note});
}

}  // namespace slabtide
