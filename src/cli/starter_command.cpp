#include "slabtide/cli/starter_command.h"

#include <filesystem>
#include <ostream>

#include <fmt/format.h>

#include "slabtide/core/embedded.h"
#include "slabtide/core/files.h"

namespace slabtide {

namespace {

CommandLine starter_line() {
  CommandLine line;
  line.name = "starter";
  line.summary = "a commented job file to start from";
  line.options = {
      {"write", "FILE", "write it to FILE, which must not be there yet; else print it", false}};
  return line;
}

int run_starter(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto path = line.text("write");
  if (!path) {
    out << embedded::starter_toml();
    return exit_done;
  }
  if (std::filesystem::exists(std::filesystem::symlink_status(*path))) {
    err << fmt::format("{}: is there already and is left as it is\n  give another name\n", *path);
    return exit_could_not;
  }
  if (const auto fault = replace_file(*path, embedded::starter_toml())) {
    err << fmt::format("{}: {}\n  {}\n", *path, fault->message, fault->next_step);
    return exit_could_not;
  }
  out << fmt::format("{} written: edit it, then run slabtide plan {}\n", *path, *path);
  return exit_done;
}

}  // namespace

const Command starter_command{starter_line, run_starter};

}  // namespace slabtide
