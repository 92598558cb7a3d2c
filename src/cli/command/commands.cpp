#include "slabtide/cli/command/commands.h"

#include <array>

#include "slabtide/cli/command/check_back_command.h"
#include "slabtide/cli/command/compare_command.h"
#include "slabtide/cli/command/crew_command.h"
#include "slabtide/cli/command/fetch_command.h"
#include "slabtide/cli/command/learn_command.h"
#include "slabtide/cli/command/mixes_command.h"
#include "slabtide/cli/command/note_command.h"
#include "slabtide/cli/command/outlook_command.h"
#include "slabtide/cli/command/plan_command.h"
#include "slabtide/cli/command/quick_command.h"
#include "slabtide/cli/command/saw_command.h"
#include "slabtide/cli/command/starter_command.h"

namespace slabtide {

std::span<const Command> commands() {
  static const std::array all{plan_command,    crew_command,  saw_command,        outlook_command,
                              compare_command, note_command,  check_back_command, learn_command,
                              mixes_command,   fetch_command, quick_command,      starter_command};
  return all;
}

}  // namespace slabtide
