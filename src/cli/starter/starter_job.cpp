#include "starter_job.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>

#include "core/zone_at.h"
#include "day_option.h"
#include "job/toml/job_words.h"
#include "job/toml/quantity_words.h"
#include "place_option.h"
#include "slabtide/core/embedded.h"
#include "slabtide/core/units.h"
#include "slabtide/job/reading/read_job.h"

namespace slabtide {

namespace {

constexpr std::string_view starter_zone = "America/Chicago";  // of the jobs as they are carried
constexpr auto sun_sides =
    std::to_array<std::string_view>({"south", "west", "north", "east", "open"});

/// Replaces the value after "key = "; a comment behind it keeps its column where there is room.
void set_value(std::string& job, std::string_view key, const std::string& value) {
  const std::string head = fmt::format("\n{} = ", key);
  const std::size_t found = job.find(head);
  if (found == std::string::npos) throw std::logic_error("the starting job says no " + head);
  const std::size_t begin = found + head.size();
  const std::size_t end = std::min(job.find('#', begin), job.find('\n', begin));
  constexpr std::size_t apart = 2;
  const std::size_t width = job[end] == '#' ? std::max(end - begin, value.size() + apart) : 0;
  job.replace(begin, end - begin, fmt::format("{:<{}}", value, width));
}

/// Puts a "#" before the key; what stands behind it moves by one.
void leave_out(std::string& job, std::string_view key, std::size_t from = 0) {
  const std::size_t found = job.find(fmt::format("\n{} = ", key), from);
  if (found == std::string::npos)
    throw std::logic_error("the starting job has no key to leave out");
  job.insert(found + 1, "#");
}

/// "16 x 12", "16' by 12'": two lengths in feet; empty for anything else.
std::optional<std::array<double, 2>> parse_size_ft(const std::string& words) {
  for (const std::string_view mark : {"x", "X", "×", "by"}) {
    const std::size_t at = words.find(mark);
    if (at == std::string::npos) continue;
    std::array<double, 2> size{};
    const std::string_view both = words;
    const std::array<std::string_view, 2> parts{both.substr(0, at), both.substr(at + mark.size())};
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const auto said = parse_quantity(parts[i], length_quantity, UnitSystem::us);
      if (!said) return std::nullopt;
      size[i] = said->unit == nullptr ? said->value : ft_from_m(said->unit->to_si(said->value));
    }
    return size;
  }
  return std::nullopt;
}

std::string point(double x_ft, double y_ft) { return fmt::format("[{:.6g}, {:.6g}]", x_ft, y_ft); }

}  // namespace

StarterJob::StarterJob(const ParsedLine& line) : line_(line), text_(embedded::starter_toml()) {
  const TimeZone::Loaded loaded = TimeZone::load(starter_zone);
  if (loaded.zone) zone_ = *loaded.zone;
}

void StarterJob::shorten() {
  text_ = embedded::starter_short_toml();
  short_ = true;
}

std::string StarterJob::put_place(const std::string& words) {
  const auto place = parse_place(words);
  if (!place) return place_fault(words);
  set_value(text_, "latitude", fmt::format("{}", place->latitude_deg));
  set_value(text_, "longitude", fmt::format("{}", place->longitude_deg));
  // The elevation of the starter job's own site does not apply to this place.
  if (!short_) leave_out(text_, "elevation");
  zone_name_ = zone_name_at(place->latitude_deg, place->longitude_deg);
  set_value(text_, "time_zone", fmt::format("\"{}\"", zone_name_));
  const TimeZone::Loaded loaded = TimeZone::load(zone_name_);
  if (!loaded.zone) return loaded.error.message;
  zone_ = *loaded.zone;
  warning_ = sign_doubt(*place);
  return {};
}

std::string StarterJob::put_day(const std::string& words) {
  const AskedDay day = typed_day(words, line_, zone_, true);
  if (!day.date) return day.fault;
  set_value(text_, "date", boost::gregorian::to_iso_extended_string(*day.date));
  return {};
}

std::string StarterJob::put_finish(const std::string& word) {
  const auto finish = finish_named(word);
  if (!finish) return fmt::format("--finish: got '{}', expected {}", word, finish_list());
  set_value(text_, "finish", fmt::format("\"{}\"", word_of(*finish)));
  return {};
}

std::string StarterJob::put_size(const std::string& words) {
  const auto size_ft = parse_size_ft(words);
  if (!size_ft) return fmt::format("--size: got '{}', expected two lengths such as 16 x 12", words);
  StarterJob tried = *this;
  tried.along_ft_ = size_ft->front();
  tried.out_ft_ = size_ft->back();
  const Parsed<Job> reading = read_job(tried.text());
  if (!reading.ok()) {
    return fmt::format("--size: {:g} by {:g} ft: {}", size_ft->front(), size_ft->back(),
                       reading.diagnostics.front().message);
  }
  along_ft_ = tried.along_ft_;
  out_ft_ = tried.out_ft_;
  return {};
}

std::string StarterJob::put_sun_side(const std::string& word) {
  if (std::find(sun_sides.begin(), sun_sides.end(), word) == sun_sides.end()) {
    return fmt::format("--sun-side: got '{}', expected south, west, north, east or open", word);
  }
  sun_side_ = word;
  return {};
}

void StarterJob::put_forecast(const std::string& path) {
  const std::size_t weather = text_.find("\n[weather]");
  for (const std::string_view key : {"high", "low", "dew_point", "wind", "cloud"}) {
    leave_out(text_, key, weather);
  }
  text_.erase(text_.find("\n#forecast = ", weather) + 1, 1);
  set_value(text_, "forecast", fmt::format("\"{}\"", path));
  has_forecast_ = true;
}

/// The slab with its side of the house across from the sun.
void StarterJob::draw(std::string& text) const {
  const bool along_x = sun_side_ != "west" && sun_side_ != "east";
  const double x_ft = along_x ? along_ft_ : out_ft_;
  const double y_ft = along_x ? out_ft_ : along_ft_;
  set_value(
      text, "outline",
      fmt::format("[[0, 0], {}, {}, {}]", point(x_ft, 0.0), point(x_ft, y_ft), point(0.0, y_ft)));
  if (sun_side_ == "open") {
    text.erase(text.find("\n[[obstacle]]"));
    return;
  }
  const double wall_x_ft = sun_side_ == "west" ? x_ft : 0.0;
  const double wall_y_ft = sun_side_ == "south" ? y_ft : 0.0;
  set_value(text, "from", point(wall_x_ft, wall_y_ft));
  set_value(text, "to", along_x ? point(x_ft, wall_y_ft) : point(wall_x_ft, y_ft));
}

std::string StarterJob::text() const {
  std::string text = text_;
  if (short_) draw(text);
  return text;
}

std::string StarterJob::remarks() const {
  std::string said;
  if (!zone_name_.empty()) {
    said += fmt::format("time zone {}, from the place: change it if that is wrong\n", zone_name_);
  }
  const std::string_view weather = has_forecast_ ? "" : "the weather, ";
  if (short_) {
    return said +
           fmt::format("{}the mix, the start and the {} in it are only an example: put yours in\n",
                       weather, sun_side_ == "open" ? "saws" : "house");
  }
  return said + fmt::format(
                    "{}the mix, the slabs, the house and the maple in it are only an example: put "
                    "yours in\n",
                    weather);
}

}  // namespace slabtide
