#include "planner_command.h"

#include <algorithm>
#include <filesystem>
#include <ostream>
#include <string>
#include <system_error>
#include <vector>

#include <fmt/format.h>

#include "cli/guard/write_guard.h"
#include "cli/jobs/output.h"
#include "core/utf8.h"
#include "desktop_browser.h"
#include "planner_files.h"
#include "slabtide/core/files.h"

namespace slabtide {

namespace {

namespace fs = std::filesystem;

CommandLine planner_line() {
  CommandLine line;
  line.name = "planner";
  line.summary = "the planner: a page to draw and plan a pour in, offline";
  line.options = {{"open", "", "open it in this desktop's browser", false},
                  {"write", "FILE-or-FOLDER",
                   "write it to FILE.html, one page that works from disk, or into FOLDER, which an "
                   "https host serves and a phone installs from",
                   false},
                  force_option()};
  line.details =
      "Example: slabtide planner --write planner.html --open\n"
      "The page plans by itself, offline; what you enter stays in the browser.\n";
  return line;
}

int tell(const std::string& where, const FileError& fault, std::ostream& err) {
  err << fmt::format("{}: {}\n  {}\n", printable(where), fault.message, fault.next_step);
  return exit_could_not;
}

int not_there(const std::vector<PlannerFiles>& places, std::ostream& err) {
  err << "slabtide planner: the planner's page is not here; looked for\n";
  for (const PlannerFiles& files : places) {
    err << fmt::format("    {}\n", printable(files.page.lexically_normal().string()));
  }
  err << "  install the package that has it, or run tools/planner in Slabtide's sources\n";
  return exit_could_not;
}

/// A file of the planner, and where it goes.
struct Copied {
  fs::path from;
  WrittenFile to;
};

/// The page alone for FILE.html, else all that the folder for a web host holds.
std::vector<Copied> copies_for(const std::string& target, const PlannerFiles& files) {
  if (ending_of(target) == ".html") return {{files.page, {target, FileKind::page}}};
  std::vector<Copied> copies;
  std::error_code code;
  for (const auto& entry : fs::directory_iterator(files.site, code)) {
    const std::string name = entry.path().filename().string();
    const FileKind kind = name == "index.html" ? FileKind::page : FileKind::planner;
    copies.push_back({entry.path(), {(fs::path(target) / name).string(), kind}});
  }
  // The page last: until then a folder that is served is what it was.
  std::sort(copies.begin(), copies.end(), [](const Copied& a, const Copied& b) {
    return std::pair(a.to.kind == FileKind::page, a.to.path) <
           std::pair(b.to.kind == FileKind::page, b.to.path);
  });
  return copies;
}

std::optional<FileError> make_folder(const std::string& folder) {
  std::error_code code;
  fs::create_directories(folder, code);
  if (!code) return std::nullopt;
  return FileError{"the folder cannot be made: " + code.message(),
                   "give a folder that may be written to, or a file that ends in .html"};
}

/// Writes all of them, each whole or not at all. Returns the exit code.
int write_copies(const std::vector<Copied>& copies, bool force, std::ostream& err) {
  std::vector<ReadFile> read;
  std::vector<WrittenFile> written;
  for (const Copied& copy : copies) {
    read.push_back({copy.from.string(), "the planner itself"});
    written.push_back(copy.to);
  }
  const WriteGuard guard(read, force);
  if (const auto fault = guard.fault(written)) return refuse_to_write("planner", *fault, err);
  for (const Copied& copy : copies) {
    const FileText file = read_file(copy.from);
    if (!file.text) return tell(copy.from.string(), file.error, err);
    if (const auto fault = guard.write(copy.to, *file.text)) return tell(copy.to.path, *fault, err);
  }
  return exit_done;
}

int write_planner(const std::string& target, const PlannerFiles& files, bool force,
                  std::ostream& out, std::ostream& err) {
  const std::vector<Copied> copies = copies_for(target, files);
  if (copies.empty()) {
    return tell(files.site.string(),
                {"the folder for a web host is not there", "run tools/planner"}, err);
  }
  const bool alone = ending_of(target) == ".html";
  if (!alone) {
    if (const auto fault = make_folder(target)) return tell(target, *fault, err);
  }
  if (const int code = write_copies(copies, force, err); code != exit_done) return code;
  out << fmt::format("{} written: {}\n", printable(target),
                     alone ? "open it in any browser"
                           : "put the folder on an https host and open its address on the phone");
  return exit_done;
}

int run_planner(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::vector<PlannerFiles> places = planner_places(program_folder());
  const auto files = find_planner(places);
  if (!files) return not_there(places, err);
  fs::path page = files->page;
  if (const auto target = line.text("write")) {
    const int code = write_planner(*target, *files, line.has("force"), out, err);
    if (code != exit_done) return code;
    page = ending_of(*target) == ".html" ? fs::path(*target) : fs::path(*target) / "index.html";
  }
  page = fs::absolute(page).lexically_normal();
  if (!line.has("open")) {
    if (!line.has("write")) {
      out << fmt::format("The planner: {}\n  slabtide planner --open opens it\n",
                         printable(page.string()));
    }
    return exit_done;
  }
  if (const auto fault = open_in_browser(page)) return tell("slabtide planner", *fault, err);
  return exit_done;
}

}  // namespace

const Command planner_command{planner_line, run_planner};

}  // namespace slabtide
