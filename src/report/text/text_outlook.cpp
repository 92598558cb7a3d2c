#include "slabtide/report/text/text_outlook.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "slabtide/report/words/outlook_facts.h"
#include "text_cautions.h"
#include "text_parts.h"

namespace slabtide {

namespace {

constexpr std::size_t bar_columns = 5;

/// A bar made of eighth blocks, which fill from the left.
std::string bar(double fraction) {
  constexpr std::array<std::string_view, 8> tips{"", "▏", "▎", "▍", "▌", "▋", "▊", "▉"};
  constexpr double eighths = 8.0;
  const double filled = std::clamp(fraction, 0.0, 1.0) * static_cast<double>(bar_columns);
  auto whole = static_cast<std::size_t>(std::floor(filled));
  auto rest = static_cast<std::size_t>(std::lround((filled - std::floor(filled)) * eighths));
  if (rest == tips.size()) {
    ++whole;
    rest = 0;
  }
  std::string text;
  for (std::size_t i = 0; i < whole; ++i) text += "█";
  text += tips[rest];
  return pad(text, bar_columns);
}

constexpr std::size_t hour_width = 12;  // "Fri 12:00 AM"

std::string hour_line(const OutlookHour& hour, double full_drying, const Job& job, bool wide) {
  const bool us = job.units == UnitSystem::us;
  const auto degrees = [us](double c) { return std::lround(us ? fahrenheit_from_celsius(c) : c); };
  const double wind = us ? mph_from_m_s(hour.wind_slab_m_s) : hour.wind_slab_m_s;
  const auto drying = [us](double rate) {
    return us ? fmt::format("{:5.2f}", lb_ft2_h_from_kg_m2_h(rate)) : fmt::format("{:5.1f}", rate);
  };
  const std::string rain = fmt::format("{:>3}", rain_words(hour));
  const std::string first = fmt::format(
      "  {:<{}}{:>4}{:>5}{:>5.0f}{:>5.0f}", day_clock(hour.at, job), hour_width,
      degrees(hour.air_c), degrees(hour.dew_point_c), 100.0 * hour.humidity_fraction, wind);
  if (!wide) {
    return fmt::format("{}{:>5.0f} {}{}{}{}\n", first, 100.0 * hour.cloud_fraction, rain,
                       hour.thunder ? "!" : " ", drying(hour.evaporation_sun_kg_m2_h),
                       drying(hour.evaporation_shade_kg_m2_h));
  }
  return fmt::format("{}  {}{:>4.0f}  {}{} {} {} {}  {:4.2f} {:4.2f}\n", first,
                     bar(hour.shortwave_w_m2 / full_sun_w_m2), 100.0 * hour.cloud_fraction, rain,
                     hour.thunder ? "!" : " ", drying(hour.evaporation_sun_kg_m2_h),
                     bar(hour.evaporation_sun_kg_m2_h / full_drying),
                     drying(hour.evaporation_shade_kg_m2_h), hour.set_rate_sun,
                     hour.set_rate_shade);
}

std::string outlook_heading(UnitSystem units, bool wide) {
  const bool us = units == UnitSystem::us;
  const std::string_view degrees = us ? "°F" : "°C";
  const std::string_view speed = us ? "mph" : "m/s";
  const std::string_view drying = us ? "lb/ft²/h" : "kg/m²/h";
  if (!wide) {
    return fmt::format(
        "                air  dew   RH wind cloud rain drying\n"
        "                 {}   {}    %  {:>3}    %   %  sun shade, {}\n",
        degrees, degrees, speed, drying);
  }
  return fmt::format(
      "                air  dew   RH wind  sun  cloud rain  drying, {:<9}    set pace\n"
      "                 {}   {}    %  {:>3}          %   %    sun         shade   sun shade\n",
      drying, degrees, degrees, speed);
}

std::string outlook_table(const Outlook& outlook, const Job& job, const TextStyle& style) {
  const bool wide = style.width >= text_width;
  std::string text = outlook_heading(job.units, wide);
  for (const OutlookHour& hour : outlook.hours) {
    text += hour_line(hour, full_drying_kg_m2_h(outlook), job, wide);
  }
  return text;
}

}  // namespace

std::string text_outlook(const PlannedPour& facts, const Outlook& outlook, const TextStyle& style) {
  return style.finished(
      text_opening(facts, style) + "\n" + verdict_line({outlook.verdict, outlook.reasons}, style) +
      "\n" + outlook_table(outlook, facts.job, style) +
      style.paragraph("Wind at the slab. Drying is free water off the job's sunniest and shadiest "
                      "place; set pace is 1 at 73 °F.",
                      2, 2) +
      "\n" + text_cautions(facts.plan.cautions, facts.job, style) + "\n" +
      text_assumptions(facts, style));
}

}  // namespace slabtide
