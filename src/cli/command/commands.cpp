#include "commands.h"

#include <array>

#include "check_back_command.h"
#include "compare_command.h"
#include "crew_command.h"
#include "days_command.h"
#include "fetch_command.h"
#include "learn_command.h"
#include "mixes_command.h"
#include "note_command.h"
#include "order_command.h"
#include "outlook_command.h"
#include "plan_command.h"
#include "planner_command.h"
#include "quick_command.h"
#include "saw_command.h"
#include "starter_command.h"

namespace slabtide {

std::span<const Command> commands() {
  static const std::array all{plan_command,       days_command,    crew_command,    saw_command,
                              order_command,      outlook_command, compare_command, note_command,
                              check_back_command, learn_command,   mixes_command,   fetch_command,
                              quick_command,      starter_command, planner_command};
  return all;
}

}  // namespace slabtide
