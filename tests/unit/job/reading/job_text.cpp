#include "job_text.h"

#include <stdexcept>

#include <doctest/doctest.h>

#include "slabtide/job/reading/read_job.h"

namespace slabtide::test {

std::string plain_job() {
  return R"(name = "Side yard"

[site]
latitude = 45
longitude = -92
elevation = 1000
time_zone = "America/Chicago"

[pour]
date = 2026-05-14
start = "08:00"

[weather]
high = 68
low = 41
wind = 10
cloud = 20

[mix]
cementitious = 564
w_cm = 0.45
strength = 4000
concrete_temperature = 59

[[zone]]
name = "pad"
outline = [[0, 0], [12, 0], [12, 10], [0, 10]]
thickness = 4
finish = "broom"
)";
}

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::invalid_argument(std::string(from) + " is not there");
  return text.replace(at, from.size(), to);
}

std::string job_with(std::string_view from, std::string_view to) {
  return replaced(plain_job(), from, to);
}

Job read(const std::string& text) {
  const auto reading = read_job(text);
  if (!reading.ok()) FAIL(render_all(reading.diagnostics, "job", text));
  return *reading.value;
}

}  // namespace slabtide::test
