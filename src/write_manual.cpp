#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>
#include <vector>

#include "cli/command/commands.h"
#include "cli/command/completions.h"
#include "cli/command/manual.h"

// Writes the manual pages and the shell completions into a folder from which they are installed.
// Run by the build; not part of the program.

namespace {

namespace fs = std::filesystem;

bool write(const fs::path& path, const std::string& text) {
  fs::create_directories(path.parent_path());
  std::ofstream file(path, std::ios::binary);
  file << text << std::flush;
  if (!file) std::cerr << path.string() << ": could not be written\n";
  return static_cast<bool>(file);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "usage: slabtide_manual FOLDER\n";
    return 2;
  }
  const fs::path folder(argv[1]);
  std::vector<slabtide::CommandLine> lines;
  for (const slabtide::Command& command : slabtide::commands()) lines.push_back(command.line());
  bool whole = write(folder / "man1/slabtide.1", slabtide::manual_page(lines));
  for (const slabtide::CommandLine& line : lines) {
    whole =
        write(folder / "man1" / ("slabtide-" + line.name + ".1"), slabtide::manual_page(line)) &&
        whole;
  }
  whole = write(folder / "bash/slabtide", slabtide::bash_completions(lines)) && whole;
  whole = write(folder / "zsh/_slabtide", slabtide::zsh_completions(lines)) && whole;
  whole = write(folder / "fish/slabtide.fish", slabtide::fish_completions(lines)) && whole;
  return whole ? 0 : 1;
}
