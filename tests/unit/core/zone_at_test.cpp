#include "core/zone_at.h"

#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {
struct City {
  const char* name;
  double latitude_deg;
  double longitude_deg;
  const char* zone;
};
}  // namespace

TEST_CASE("cities keep the clock that their people keep") {
  // General knowledge, from memory; many lie near a border. Phenix City lies in Alabama and keeps
  // the time of Columbus, Georgia, across the river.
  const City cities[] = {
      {"Nashville", 36.16, -86.78, "America/Chicago"},
      {"Birmingham AL", 33.52, -86.81, "America/Chicago"},
      {"Mobile", 30.70, -88.04, "America/Chicago"},
      {"Pensacola", 30.42, -87.22, "America/Chicago"},
      {"Kansas City", 39.10, -94.58, "America/Chicago"},
      {"Grand Rapids", 42.96, -85.67, "America/Detroit"},
      {"Amarillo", 35.22, -101.83, "America/Chicago"},
      {"Dodge City", 37.75, -100.02, "America/Chicago"},
      {"St George", 37.10, -113.57, "America/Denver"},
      {"Laredo", 27.53, -99.48, "America/Chicago"},
      {"New Orleans", 29.95, -90.07, "America/Chicago"},
      {"Miami", 25.76, -80.19, "America/New_York"},
      {"El Paso", 31.76, -106.48, "America/Denver"},
      {"Phoenix", 33.45, -112.07, "America/Phoenix"},
      {"Flagstaff", 35.20, -111.65, "America/Phoenix"},
      {"Kanab", 37.05, -112.53, "America/Denver"},
      {"Page AZ", 36.91, -111.46, "America/Phoenix"},
      {"Tuba City (Navajo)", 36.13, -111.24, "America/Denver"},
      {"Boise", 43.62, -116.20, "America/Boise"},
      {"Coeur d'Alene", 47.68, -116.78, "America/Los_Angeles"},
      {"Chattanooga", 35.05, -85.31, "America/New_York"},
      {"Knoxville", 35.96, -83.92, "America/New_York"},
      {"Louisville", 38.25, -85.76, "America/Kentucky/Louisville"},
      {"Evansville", 37.97, -87.57, "America/Chicago"},
      {"Gary", 41.59, -87.35, "America/Chicago"},
      {"South Bend", 41.68, -86.25, "America/Indiana/Indianapolis"},
      {"Indianapolis", 39.77, -86.16, "America/Indiana/Indianapolis"},
      {"Tallahassee", 30.44, -84.28, "America/New_York"},
      {"Panama City FL", 30.16, -85.66, "America/Chicago"},
      {"Columbus GA", 32.46, -84.99, "America/New_York"},
      {"Phenix City AL", 32.47, -85.00, "America/New_York"},
      {"Rapid City", 44.08, -103.23, "America/Denver"},
      {"Pierre", 44.37, -100.35, "America/Chicago"},
      {"Bismarck", 46.81, -100.78, "America/Chicago"},
      {"Dickinson ND", 46.88, -102.79, "America/Denver"},
      {"North Platte", 41.14, -100.76, "America/Chicago"},
      {"Scottsbluff", 41.87, -103.67, "America/Denver"},
      {"Goodland KS", 39.35, -101.71, "America/Denver"},
      {"Menominee MI", 45.11, -87.61, "America/Menominee"},
      {"Iron Mountain", 45.82, -88.07, "America/Menominee"},
      {"Marquette", 46.54, -87.40, "America/Detroit"},
      {"Detroit", 42.33, -83.05, "America/Detroit"},
      {"Windsor ON", 42.31, -83.04, "America/Toronto"},
      {"West Wendover NV", 40.74, -114.07, "America/Denver"},
      {"Ontario OR", 44.03, -116.96, "America/Boise"},
      {"Anchorage", 61.22, -149.90, "America/Anchorage"},
      {"Honolulu", 21.31, -157.86, "Pacific/Honolulu"},
      {"San Diego", 32.72, -117.16, "America/Los_Angeles"},
      {"Tijuana", 32.51, -117.04, "America/Tijuana"},
      {"Seattle", 47.61, -122.33, "America/Los_Angeles"},
      {"Denver", 39.74, -104.99, "America/Denver"},
      {"Dallas", 32.78, -96.80, "America/Chicago"},
      {"Atlanta", 33.75, -84.39, "America/New_York"},
      {"New York", 40.71, -74.01, "America/New_York"},
      {"Minneapolis", 44.98, -93.27, "America/Chicago"},
      {"Thunder Bay", 48.38, -89.25, "America/Toronto"},
      {"Winnipeg", 49.90, -97.14, "America/Winnipeg"},
      {"Regina", 50.45, -104.62, "America/Regina"},
      {"Calgary", 51.04, -114.07, "America/Edmonton"},
      {"Vancouver", 49.28, -123.12, "America/Vancouver"},
      {"Halifax", 44.65, -63.58, "America/Halifax"},
      {"St. John's", 47.56, -52.71, "America/St_Johns"},
      {"London", 51.51, -0.13, "Europe/London"},
      {"Dublin", 53.35, -6.26, "Europe/Dublin"},
      {"Lisbon", 38.72, -9.14, "Europe/Lisbon"},
      {"Madrid", 40.42, -3.70, "Europe/Madrid"},
      {"Berlin", 52.52, 13.40, "Europe/Berlin"},
      {"Warsaw", 52.23, 21.01, "Europe/Warsaw"},
      {"Helsinki", 60.17, 24.94, "Europe/Helsinki"},
      {"Moscow", 55.76, 37.62, "Europe/Moscow"},
      {"Istanbul", 41.01, 28.98, "Europe/Istanbul"},
      {"Dubai", 25.20, 55.27, "Asia/Dubai"},
      {"Delhi", 28.70, 77.10, "Asia/Kolkata"},
      {"Kathmandu", 27.72, 85.32, "Asia/Kathmandu"},
      {"Perth", -31.95, 115.86, "Australia/Perth"},
      {"Adelaide", -34.93, 138.60, "Australia/Adelaide"},
      {"Broken Hill", -31.96, 141.46, "Australia/Broken_Hill"},
      {"Sydney", -33.87, 151.21, "Australia/Sydney"},
      {"Brisbane", -27.47, 153.03, "Australia/Brisbane"},
      {"Auckland", -36.85, 174.76, "Pacific/Auckland"},
      {"Tokyo", 35.68, 139.65, "Asia/Tokyo"},
      {"Johannesburg", -26.20, 28.05, "Africa/Johannesburg"},
      {"Sao Paulo", -23.55, -46.63, "America/Sao_Paulo"},
      {"Buenos Aires", -34.60, -58.38, "America/Argentina/Buenos_Aires"},
      {"Mexico City", 19.43, -99.13, "America/Mexico_City"},
      {"San Juan PR", 18.47, -66.11, "America/Puerto_Rico"},
  };
  for (const City& city : cities) {
    CAPTURE(city.name);
    CHECK(zone_name_at(city.latitude_deg, city.longitude_deg) == city.zone);
  }
}

TEST_CASE("at sea the clock goes by the sun") {
  CHECK(zone_name_at(30.0, -45.0) == "Etc/GMT+3");
  CHECK(zone_name_at(-58.0, 180.0) == "Etc/GMT-12");
}

TEST_CASE("a place that is none is the caller's mistake") {
  const double nowhere = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(zone_name_at(90.1, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(zone_name_at(0.0, -180.1), std::invalid_argument);
  CHECK_THROWS_AS(zone_name_at(nowhere, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(zone_name_at(0.0, nowhere), std::invalid_argument);
}
