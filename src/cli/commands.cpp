#include "slabtide/cli/commands.h"

#include <array>

#include "slabtide/cli/check_back_command.h"
#include "slabtide/cli/compare_command.h"
#include "slabtide/cli/crew_command.h"
#include "slabtide/cli/fetch_command.h"
#include "slabtide/cli/learn_command.h"
#include "slabtide/cli/mixes_command.h"
#include "slabtide/cli/note_command.h"
#include "slabtide/cli/outlook_command.h"
#include "slabtide/cli/plan_command.h"
#include "slabtide/cli/quick_command.h"
#include "slabtide/cli/saw_command.h"
#include "slabtide/cli/starter_command.h"

namespace slabtide {

std::span<const Command> commands() {
  static const std::array all{plan_command,    crew_command,  saw_command,        outlook_command,
                              compare_command, note_command,  check_back_command, learn_command,
                              mixes_command,   fetch_command, quick_command,      starter_command};
  return all;
}

}  // namespace slabtide
