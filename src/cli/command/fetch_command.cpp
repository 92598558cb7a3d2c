#include "fetch_command.h"

#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <ostream>
#include <thread>

#include <fmt/format.h>

#include "cli/fetch/fetch.h"
#include "cli/guard/write_guard.h"

namespace slabtide {
namespace {

constexpr const char* contact_variable = "SLABTIDE_CONTACT";

CommandLine fetch_line() {
  CommandLine line;
  line.name = "fetch";
  line.summary = "get the hourly forecast of a job's site";
  line.operand = "JOB";
  line.options = {
      {"from", "nws|open-meteo",
       "the US National Weather Service, or Open-Meteo; else nws where it serves the site", false},
      {"to", "FILE",
       "where to keep it; else the file the job's [weather] names, or JOB-forecast.json beside "
       "the job",
       false},
      {"contact", "TEXT",
       "your e-mail, given to the service as it asks; else what SLABTIDE_CONTACT holds", false},
      force_option(),
      {"base-url", "URL", "another server that works like the service", false}};
  line.details =
      "This is the only command that uses the network. The old file is replaced only by\n"
      "a forecast that has been read and can be planned with.\n";
  return line;
}

int run_fetch(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  FetchOrder order{.job_path = line.operands().front(),
                   .from = {},
                   .to = line.text("to"),
                   .contact = line.text("contact"),
                   .force = line.has("force"),
                   .base_url = line.text("base-url")};
  if (const auto id = line.text("from")) {
    order.from = service_of(*id);
    if (!order.from) {
      err << refusal("fetch", fmt::format("--from: got '{}', expected nws or open-meteo", *id));
      return exit_input_wrong;
    }
  }
  if (!order.contact) order.contact = usual_contact();
  return fetch(order, real_fetch_world(), out, err);
}

}  // namespace

FetchWorld real_fetch_world() {
  FetchWorld world;
  world.now = [] { return boost::posix_time::second_clock::universal_time(); };
  world.sleep = [](double seconds) {
    std::this_thread::sleep_for(std::chrono::duration<double>(seconds));
  };
  world.on_terminal = isatty(STDERR_FILENO) == 1;
  return world;
}

std::optional<std::string> usual_contact() {
  const char* const contact = std::getenv(contact_variable);
  if (contact == nullptr || *contact == '\0') return std::nullopt;
  return contact;
}

const Command fetch_command{fetch_line, run_fetch};

}  // namespace slabtide
