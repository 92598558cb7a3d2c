#include "fetch.h"

#include <algorithm>
#include <filesystem>
#include <ostream>
#include <utility>
#include <variant>

#include <fmt/format.h>

#include "cli/guard/write_guard.h"
#include "cli/jobs/job_line.h"
#include "cli/line/command_line.h"
#include "core/text.h"
#include "core/utf8.h"
#include "request/download/curl_function.h"
#include "request/download/http_retry.h"
#include "request/download/url.h"
#include "slabtide/core/files.h"
#include "slabtide/core/version.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/request/plan/load_job.h"

namespace slabtide {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t longest_contact = 200;
constexpr std::size_t terminal_width = 80;
constexpr std::size_t bytes_per_kb = 1000;

/// Where the forecast is written, and the line the job file needs so that `plan` finds it there.
struct Target {
  fs::path path;
  std::optional<std::string> job_line;  ///< absent if the job already names the file
};

/// A table typed by hand must not be replaced by a service's document.
bool is_typed_table(const fs::path& path) { return path.extension() == ".csv"; }

Target target_of(const FetchOrder& order, const Job& job) {
  const fs::path folder = fs::path{order.job_path}.parent_path();
  const auto* const named = std::get_if<ForecastFile>(&job.weather);
  if (!order.to && named != nullptr && !is_typed_table(named->path))
    return {folder / named->path, std::nullopt};
  const fs::path own_name = fs::path{order.job_path}.stem().string() + "-forecast.json";
  const fs::path path = order.to ? fs::path{*order.to} : folder / own_name;
  const fs::path home = fs::absolute(order.job_path).parent_path();  // `folder` may be empty
  const fs::path beside =
      fs::absolute(path).lexically_normal().lexically_proximate(home.lexically_normal());
  if (named != nullptr && fs::path{named->path}.lexically_normal() == beside)
    return {path, std::nullopt};
  return {path, fmt::format("forecast = \"{}\"", beside.generic_string())};
}

/// Why the contact cannot be used in a header's comment; empty if it can.
std::string contact_fault(const std::string& contact) {
  const auto fits = [](char c) { return c >= ' ' && c <= '~' && c != '(' && c != ')'; };
  if (!contact.empty() && contact.size() <= longest_contact &&
      std::all_of(contact.begin(), contact.end(), fits))
    return {};
  return "the contact must be plain text without brackets, such as an e-mail address";
}

std::string base_url_fault(const std::string& url) {
  if (web_address(url) && url.find_first_of("?#") == std::string::npos) return {};
  return fmt::format("--base-url: got '{}', expected an address such as https://forecasts.example",
                     url);
}

/// One run of the command.
class Fetch {
 public:
  Fetch(const FetchOrder& order, const FetchWorld& world, std::ostream& out, std::ostream& err)
      : order_(order), world_(world), out_(out), err_(err) {}

  int run() {
    if (!curl_is_there()) {
      return give_up("fetching needs the package libcurl4, which is not there",
                     "install it and run it again; typed weather needs none");
    }
    if (!check_order() || !read_job_file()) return exit_input_wrong;
    target_ = target_of(order_, job_);
    const WrittenFile file{target_.path.string(), FileKind::forecast};
    const WriteGuard guard = the_guard();
    if (const auto fault = guard.fault({&file, 1})) return refuse_to_write("fetch", *fault, err_);
    say_what_is_done();
    DownloadResult result = download_forecast(download_order(), getter());
    clear_progress();
    if (const auto* const failure = std::get_if<HttpFailure>(&result))
      return give_up(failure->message, failure->next_step);
    return keep(std::get<DownloadedForecast>(result), guard);
  }

 private:
  void say(const std::string& sentence) {
    out_ << wrap(printable(sentence), terminal_width, 2) << "\n";
  }

  int refuse(const std::string& fault) {
    err_ << refusal("fetch", fault);
    return exit_input_wrong;
  }

  int give_up(const std::string& message, const std::string& next_step) {
    err_ << wrap("slabtide fetch: " + printable(message), terminal_width, 2) << "\n";
    if (!next_step.empty()) err_ << wrap("  " + printable(next_step), terminal_width, 2) << "\n";
    std::error_code ignored;
    if (fs::exists(target_.path, ignored))
      err_ << fmt::format("  {} is as it was\n", printable(target_.path.string()));
    return exit_could_not;
  }

  bool check_order() {
    std::string fault = order_.contact ? contact_fault(*order_.contact) : "";
    if (fault.empty() && order_.base_url) fault = base_url_fault(*order_.base_url);
    if (!fault.empty()) refuse(fault);
    return fault.empty();
  }

  bool read_job_file() {
    const FileText file = read_file(order_.job_path);
    if (!file.text) {
      err_ << fmt::format("{}: {}\n  {}\n", printable(order_.job_path), file.error.message,
                          file.error.next_step);
      return false;
    }
    Parsed<Job> reading = read_job(*file.text);
    err_ << render_all(reading.diagnostics, order_.job_path, *file.text);
    if (!reading.ok()) return false;
    job_ = std::move(*reading.value);
    return true;
  }

  /// Protects the job, and its journal and mix book, even if these do not exist yet.
  WriteGuard the_guard() const {
    const std::string& job = order_.job_path;
    return {{{job, "the job"},
             {journal_path(job), fmt::format("the journal of {}", job)},
             {book_path({.path = job}), mix_book_role}},
            order_.force};
  }

  ForecastService service() const {
    if (order_.from) return *order_.from;
    return in_nws_area(job_.site.latitude_deg, job_.site.longitude_deg)
               ? ForecastService::nws
               : ForecastService::open_meteo;
  }

  void say_what_is_done() {
    const std::string_view why = order_.from ? ""
                                 : service() == ForecastService::nws
                                     ? ", which serves the place (--from names another)"
                                     : ", since the place is outside the United States";
    say(fmt::format("Asking {} for the hours at {}, {}{}.", name_of(service()),
                    short_degrees(job_.site.latitude_deg), short_degrees(job_.site.longitude_deg),
                    why));
    if (service() == ForecastService::nws && !order_.contact) {
      say("The service asks who is calling: give your e-mail with --contact, or once in the "
          "environment as SLABTIDE_CONTACT.");
    }
  }

  DownloadOrder download_order() const {
    std::string base{order_.base_url.value_or(std::string{base_url_of(service())})};
    while (base.ends_with('/')) base.pop_back();
    return {.service = service(),
            .base_url = std::move(base),
            .latitude_deg = job_.site.latitude_deg,
            .longitude_deg = job_.site.longitude_deg,
            .clock = clock_of(job_),
            .pour_start = job_.pour.start,
            .now = world_.now()};
  }

  HttpGet getter() {
    HttpOptions options = world_.limits;
    options.user_agent =
        fmt::format("slabtide/{} ({})", version(), order_.contact.value_or("no contact given"));
    if (world_.on_terminal) options.progress = [this](std::size_t bytes) { show_progress(bytes); };
    const HttpGet get = [options](const std::string& url) { return http_get(url, options); };
    return with_retries(get, Patience{},
                        {.now = world_.now, .sleep = world_.sleep, .say = [this](const auto& line) {
                           clear_progress();
                           say(line);
                         }});
  }

  void show_progress(std::size_t bytes) {
    const std::size_t kb = bytes / bytes_per_kb;
    if (kb == shown_kb_) return;
    shown_kb_ = kb;
    err_ << fmt::format("\r  {} kB", kb) << std::flush;
  }

  void clear_progress() {
    if (shown_kb_ > 0) err_ << fmt::format("\r{:20}\r", "") << std::flush;
    shown_kb_ = 0;
  }

  int keep(const DownloadedForecast& downloaded, const WriteGuard& guard) {
    const WrittenFile file{target_.path.string(), FileKind::forecast};
    if (const auto fault = guard.write(file, downloaded.document))
      return give_up(fault->message, fault->next_step);
    say_what_came(downloaded);
    const auto coverage = coverage_fault(downloaded.forecast, job_.pour.start, clock_of(job_));
    if (coverage) err_ << wrap("Warning: " + *coverage, terminal_width, 2) << "\n";
    return exit_done;
  }

  void say_what_came(const DownloadedForecast& downloaded) {
    const Clock clock = clock_of(job_);
    const auto moment = [&clock](UtcTime time) { return clock.date_time(time); };
    const Forecast& forecast = downloaded.forecast;
    say(fmt::format("{}: {}{}, from {} to {}.", target_.path.string(), forecast.source,
                    forecast.issued ? ", issued " + moment(*forecast.issued) : "",
                    moment(forecast.hours.front().at), moment(forecast.hours.back().at)));
    for (const std::string& remark : downloaded.remarks) say(remark);
    for (const std::string& note : forecast.notes) say(fmt::format("In it: {}.", note));
    if (target_.job_line) {
      out_ << fmt::format(
          "For the plan to use it, let the job's [weather] hold only this line:\n"
          "  {}\n",
          printable(*target_.job_line));
    }
  }

  const FetchOrder& order_;
  const FetchWorld& world_;
  std::ostream& out_;
  std::ostream& err_;
  Job job_;
  Target target_;
  std::size_t shown_kb_ = 0;
};

}  // namespace

int fetch(const FetchOrder& order, const FetchWorld& world, std::ostream& out, std::ostream& err) {
  return Fetch{order, world, out, err}.run();
}

}  // namespace slabtide
