#include "page_outlook.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "page_cautions.h"
#include "page_document.h"
#include "page_headline.h"
#include "report/markup/embedded_pages.h"
#include "report/markup/page_views.h"
#include "report/markup/svg.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// A bar filled by this fraction; the value is beside it in words.
std::string bar(const std::string& style, double fraction) {
  constexpr double width = 60.0;
  constexpr double height = 8.0;
  const double filled = width * std::clamp(fraction, 0.0, 1.0);
  return Element("svg")
      .set("class", "bar")
      .set("width", width)
      .set("height", height)
      .set("aria-hidden", "true")
      .add(Element("rect").set("class", "bar-" + style).set("width", filled).set("height", height))
      .str();
}

std::string rain_view(const std::string& words) {
  const bool is_chance = words.front() >= '0' && words.front() <= '9';
  return is_chance ? words + " %" : words;
}

View hour_view(const OutlookHour& hour, double full_drying, const Job& job) {
  const UnitSystem units = job.units;
  View view;
  view.put("at", day_clock(hour.at, job))
      .put("iso", iso8601_minute(hour.at, job.site.time_zone))
      .put("air", temperature_words(hour.air_c, units))
      .put("dew", temperature_words(hour.dew_point_c, units))
      .put("humidity", percent_words(hour.humidity_fraction))
      .put("wind", wind_words(hour.wind_slab_m_s, units))
      .put("sun", fmt::format("{:.0f} W/m²", hour.shortwave_w_m2))
      .put("sun_bar", bar("sun", hour.shortwave_w_m2 / full_sun_w_m2))
      .put("cloud", percent_words(hour.cloud_fraction))
      .put("rain", rain_view(rain_words(hour)))
      .flag("thunder", hour.thunder)
      .put("in_sun", evaporation_words(hour.evaporation_sun_kg_m2_h, units))
      .put("in_sun_bar", bar("drying", hour.evaporation_sun_kg_m2_h / full_drying))
      .put("in_shade", evaporation_words(hour.evaporation_shade_kg_m2_h, units))
      .put("pace_sun", fmt::format("{:.2f}", hour.set_rate_sun))
      .put("pace_shade", fmt::format("{:.2f}", hour.set_rate_shade));
  return view;
}

View view_of(const OutlookFacts& facts) {
  const Job& job = facts.plan.job;
  std::vector<View> hours;
  const double full_drying = full_drying_kg_m2_h(facts.outlook);
  for (const OutlookHour& hour : facts.outlook.hours) {
    hours.push_back(hour_view(hour, full_drying, job));
  }
  View view = opening_view(job);
  view.put("headline", headline_view(facts.plan))
      .put("hours", std::move(hours))
      .put("cautions_list", cautions_view(facts.plan))
      .put("sources", fill(embedded::page_sources_html(), sources_view(facts.plan)));
  return view;
}

}  // namespace

std::string page_outlook(const OutlookFacts& facts) {
  return plain_page(facts.plan.job, embedded::page_outlook_html(), view_of(facts));
}

}  // namespace slabtide
