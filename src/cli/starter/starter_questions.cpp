#include "starter_questions.h"

#include <functional>
#include <istream>
#include <ostream>
#include <string_view>

#include "core/utf8.h"
#include "job/toml/job_words.h"

namespace slabtide {

namespace {

/// Asks until `put` finds nothing wrong; false if the answers end.
bool ask(std::istream& in, std::ostream& out, std::string_view question, std::string_view usual,
         const std::function<std::string(const std::string&)>& put) {
  for (;;) {
    out << question;
    if (!usual.empty()) out << " [" << usual << "]";
    out << ": " << std::flush;
    std::string answer;
    if (!std::getline(in, answer)) return false;
    const std::size_t first = answer.find_first_not_of(" \t\r");
    answer = first == std::string::npos
                 ? std::string(usual)
                 : answer.substr(first, answer.find_last_not_of(" \t\r") - first + 1);
    const std::string fault = put(answer);
    if (fault.empty()) return true;
    out << "  " << printable(fault) << "\n";
  }
}

std::string take_yes(const std::string& answer, bool& yes) {
  const char first = answer.empty() ? ' ' : answer.front();
  yes = first == 'y' || first == 'Y';
  return yes || first == 'n' || first == 'N' ? "" : "yes or no";
}

}  // namespace

std::optional<StarterWish> ask_for_starter(StarterJob& job, std::istream& in, std::ostream& out) {
  job.shorten();
  StarterWish wish;
  const auto put = [&job](auto member) {
    return [&job, member](const std::string& answer) { return (job.*member)(answer); };
  };
  const bool answered =
      ask(in, out, "Where? Latitude and longitude as a map gives them, such as 44.9, -91.9", "",
          put(&StarterJob::put_place)) &&
      ask(in, out, "Which day? 5/14, Fri, tomorrow", "tomorrow", put(&StarterJob::put_day)) &&
      ask(in, out, "Which finish? " + finish_list(), "stamp", put(&StarterJob::put_finish)) &&
      ask(in, out, "How large, in feet: along the house and out from it", "16 x 12",
          put(&StarterJob::put_size)) &&
      ask(in, out, "Which side is open to the sun? south, west, north, east; or open all around",
          "south", put(&StarterJob::put_sun_side)) &&
      ask(in, out, "Get the forecast from the weather service now?", "yes",
          [&wish](const std::string& answer) { return take_yes(answer, wish.wants_forecast); }) &&
      ask(in, out, "Into which file?", "job.toml", [&wish](const std::string& answer) {
        wish.path = answer;
        return std::string();
      });
  return answered ? std::optional(wish) : std::nullopt;
}

}  // namespace slabtide
