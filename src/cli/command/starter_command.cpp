#include "starter_command.h"

#include <algorithm>
#include <ostream>
#include <stdexcept>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "cli/guard/write_guard.h"
#include "core/utf8.h"
#include "core/zone_at.h"
#include "job/toml/times.h"
#include "place_option.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/core/embedded.h"

namespace slabtide {

namespace {

CommandLine starter_line() {
  CommandLine line;
  line.name = "starter";
  line.summary = "a commented job file to start from";
  line.options = {
      {"write", "FILE", "write it to FILE, which must not be there yet; else print it", false},
      place_option(),
      {"date", "YYYY-MM-DD", "the day of the pour", false},
      force_option()};
  line.details =
      "Example: slabtide starter --write job.toml --place 44.9,-91.9 --date 2026-05-14\n";
  return line;
}

/// Replaces the value after "key = "; a comment behind it keeps its column.
void set_value(std::string& job, std::string_view key, const std::string& value) {
  const std::string head = fmt::format("\n{} = ", key);
  const std::size_t found = job.find(head);
  if (found == std::string::npos) throw std::logic_error("the starting job says no " + head);
  const std::size_t begin = found + head.size();
  const std::size_t end = std::min(job.find('#', begin), job.find('\n', begin));
  const std::size_t width = job[end] == '#' ? end - begin : 0;
  job.replace(begin, end - begin, fmt::format("{:<{}}", value, width));
}

/// The starter job changed according to the options, or what is wrong with them.
class StarterJob {
 public:
  explicit StarterJob(const ParsedLine& line) : text(embedded::starter_toml()) {
    if (const auto place = line.text("place")) put_place(*place);
    if (const auto date = line.text("date")) put_date(*date);
  }

  std::string text;
  std::string fault;
  std::string remark;   ///< what was assumed
  std::string warning;  ///< for a place that is probably mistyped

 private:
  void put_place(const std::string& words) {
    const auto place = read_place(words);
    if (!place) {
      fault = place_fault(words);
      return;
    }
    set_value(text, "latitude", fmt::format("{}", place->latitude_deg));
    set_value(text, "longitude", fmt::format("{}", place->longitude_deg));
    // The elevation of the starter job's own site does not apply to this place.
    text.replace(text.find("\nelevation = "), 1, "\n#");
    put_time_zone(*place);
    warning = sign_doubt(*place);
  }

  void put_time_zone(const Place& place) {
    const std::string zone = zone_name_at(place.latitude_deg, place.longitude_deg);
    set_value(text, "time_zone", fmt::format("\"{}\"", zone));
    remark = fmt::format("time zone {}, by the place: change it if it is another\n", zone);
  }

  void put_date(const std::string& words) {
    if (parse_pour_date(words)) return set_value(text, "date", words);
    if (fault.empty())
      fault = fmt::format("--date: got '{}', expected {}", words, expected_pour_date());
  }
};

int run_starter(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const StarterJob job(line);
  if (!job.fault.empty()) {
    err << refusal("starter", job.fault);
    return exit_input_wrong;
  }
  if (!job.warning.empty()) err << place_warning("starter", job.warning);
  const auto path = line.text("write");
  if (!path) {
    out << job.text;
    return exit_done;
  }
  const WriteGuard guard({}, line.has("force"));
  const WrittenFile file{*path, FileKind::job};
  if (const auto fault = guard.fault({&file, 1})) return refuse_to_write("starter", *fault, err);
  const std::string shown = printable(*path);
  if (const auto fault = guard.write(file, job.text)) {
    err << fmt::format("{}: {}\n  {}\n", shown, fault->message, fault->next_step);
    return exit_could_not;
  }
  out << fmt::format("{0} written: edit it, then run slabtide plan {0}\n", shown) << job.remark
      << "the weather, the mix, the slabs, the house and the maple in it are an example's: put "
         "yours in\n";
  return exit_done;
}

}  // namespace

const Command starter_command{starter_line, run_starter};

}  // namespace slabtide
