#include "published/does_not_meet.h"

#include <algorithm>
#include <iterator>

namespace slabtide::test {

namespace {

std::vector<MissedCheck> finishing() {
  return {
      {.what = "wait to a print with bleed water gone",
       .in_words =
           "Wait from placing to a 1/4 in print, bleed water gone or dragged off: 4¼, 2¾ and "
           "1¾ h in air of 50, 70 and 90 °F",
       .why = "Some twenty minutes slower in the cold than contractors told, a quarter hour at "
              "70 °F: with the little heat that tests find before setting, the slab warms less.",
       .rows = {{"50 °F", 21.5}, {"70 °F", 13.9}}},
      {.what = "wait to a 1/4 in print",
       .in_words = "The same wait, the print alone",
       .why = "The print decides: the bleed water is gone or no more comes by then.",
       .rows = {{"50 °F", 21.5}, {"70 °F", 13.9}}},
      {.what = "bull float to a 1/4 in print",
       .in_words = "From the bull float to a 1/4 in print: 2 to 8 h or more",
       .why = "In 90 °F air sooner, as in the contractors' waits above.",
       .rows = {{"90 °F", -0.6}}},
      {.what = "stamping window in cool shade",
       .in_words = "Stamping in cool shade: two hours or more",
       .why = "Ready to too stiff takes a fixed fraction of the set time here.",
       .rows = {{"2 to 9 °C", -1.2}}},
      {.what = "640 ft² stamped by six on a mild day, late",
       .in_words = "640 ft² stamped in one go on a day of 65 °F: within reach of six",
       .why = "One task comes a few minutes late; seven miss none.",
       .rows = {{"high 65 °F", 2.0}}},
      {.what = "sheen off after placing",
       .in_words = "Bleed water gone one to four hours after placing",
       .why = "A few minutes sooner in hot sun, where a dry base takes a fifth of it.",
       .rows = {{"hot, 95/72 °F, concrete 85, in the sun", -0.1}}}};
}

std::vector<MissedCheck> sawing() {
  return {
      {.what = "wet saw after finishing, whole days",
       .in_words = "Wet saw after finishing: 4 h (hot) to 12 h (cold)",
       .why = "Sooner on hot days, when concrete gains its strength fast; hours later under a cold "
              "overcast sky.",
       .rows = {{"hot, 95/72 °F, concrete 85, clear, after the broom", -0.7},
                {"hot, 95/72 °F, concrete 85, clear, after the edges", -0.9},
                {"cold, 50/36 °F, concrete 60, overcast, after the broom", 1.9},
                {"cold, 50/36 °F, concrete 60, overcast, after the edges", 1.2},
                {"raw, 45/36 °F, concrete 58, overcast, after the broom", 3.2},
                {"raw, 45/36 °F, concrete 58, overcast, after the edges", 2.5}}},
      {.what = "early-entry saw after finishing, whole days",
       .in_words = "Early-entry saw after finishing: 1 h (hot) to 4 h (cold)",
       .why = "Later under a cold overcast sky.",
       .rows = {{"cold, 50/36 °F, concrete 60, overcast, after the broom", 0.3},
                {"raw, 45/36 °F, concrete 58, overcast, after the broom", 0.6}}},
      {.what = "cuts of a mild day not due before the next morning",
       .in_words = "Cuts of a mild day due no sooner than the next morning, when the trade saws",
       .why = "Stress that comes in the evening is told to reach half the strength some hours "
              "sooner; what creep takes of it in the first day is recalled, not measured.",
       .rows = {{"mild October walk, 62/42 °F, concrete 64, from 10:00", -6.8}}},
      {.what = "sawing after finishing, hot to cold",
       .in_words = "Sawing 4 h after finishing in hot weather to 3 days in cold",
       .why = "In hot sun the concrete is strong enough sooner.",
       .rows = {{"hot, 95/72 °F, concrete 85, clear, after the broom", -0.7},
                {"hot, 95/72 °F, concrete 85, clear, after the edges", -0.9}}},
      {.what = "wet saw after finishing, one column",
       .in_words = "Wet saw, worked out for one spot",
       .why = "Sooner in hot sun, where concrete gains its strength fast; later in cool shade.",
       .rows = {{"hot, 95/72 °F, concrete 85, in the sun", -0.6},
                {"cold, 55/42 °F, concrete 60, in the shade", 0.6}}}};
}

std::vector<MissedCheck> setting() {
  return {
      {.what = "final set of 25 % ash mixes",
       .in_words = "Final set of a plain mix and ten with fly ash, from the mix alone",
       .why = "Ashes of one class differ more than tests do: ask the supplier for set times.",
       .rows = {{"ash A (class C)", 35},
                {"ash B (class F)", 25},
                {"ash C (class F)", 25},
                {"ash D (class F)", -35},
                {"ash E (class F)", 50},
                {"ash H (class F)", -30},
                {"ash I (class C)", -40},
                {"ash J (class F)", -60}}},
      {.what = "initial set of 25 % ash mixes",
       .in_words = "Initial set of the same mixes",
       .why = "Ashes of one class differ more than tests do.",
       .rows = {{"ash C (class F)", 20},
                {"ash E (class F)", 20},
                {"ash H (class F)", -25},
                {"ash J (class F)", -25}}},
      {.what = "set times, mean of a class of ash",
       .in_words = "Set times, the mean of each class of ash",
       .why = "One step of the table.",
       .rows = {{"class F, initial set", -5.0}}},
      {.what = "hours to set by temperature",
       .in_words = "Hours to set from 30 to 100 °F, a rule of thumb",
       .why =
           "In the heat the rule changes faster with temperature than published tests of setting, "
           "amid which the program lies.",
       .rows = {{"100 °F", 1.21},
                {"90 °F", 0.98},
                {"80 °F", 0.66},
                {"50 °F", -0.73},
                {"30 °F", -0.64}}},
      {.what = "times slower for each 10 °F",
       .in_words = "Setting a third slower for each 10 °F colder, 40 to 90 °F",
       .why = "By a little less in the heat, as a single activation energy has it.",
       .rows = {{"80 to 70 °F", -0.045}, {"90 to 80 °F", -0.056}}},

      {.what = "strength at one day",
       .in_words = "A quarter of f'c at one day",
       .why = "A quarter of the mean, which is over f'c.",
       .rows = {{"4000 psi mix at 24 h of 73 °F", 0.071}}},
      {.what = "strength of the first days, of 28 days'",
       .in_words = "Strength at one and three days beside that at 28",
       .why = "Measured mixes of w/c 0.40 gain somewhat faster; the curve is the same for all.",
       .rows = {{"1 day, w/c 0.40", -0.0361}, {"3 days, w/c 0.40", -0.00619}}},
      {.what = "conduction, closed forms",
       .in_words = "conduction, against closed forms",
       .why = "Where the surface itself jumps, which no weather makes it do: 0.03 K of 30.",
       .rows = {{"surface step, 0.05 m, 1 h", -0.00089}},
       .is_minor = true},
      {.what = "events by a second model",
       .in_words = "when the stress is half the strength, against a second model",
       .why = "The slab cools by a third of a degree an hour there, and is 0.02 K off.",
       .rows = {{"mild afternoon, stress at half the strength", 1.1}},
       .is_minor = true},
      {.what = "set times by another integrator",
       .in_words = "how time is stepped, in set times",
       .why = "Plans are told in minutes.",
       .rows = {{"hot sun, print", 0.227},
                {"hot sun, initial set", 0.444},
                {"hot sun, final set", -0.152},
                {"cool shade, print", 0.052},
                {"cool shade, initial set", 0.369},
                {"cool shade, final set", 0.344}},
       .is_minor = true}};
}

std::vector<MissedCheck> drying() {
  return {{.what = "evaporation by Menzel's equation",
           .in_words = "The trade's table of drying, recalled",
           .why = "Little beside the 40 % that drying in the field is off by.",
           .rows = {{"concrete 70 °F, air 70 °F, 70 %, 0 mph", -0.00287},
                    {"concrete 70 °F, air 70 °F, 70 %, 5 mph", -0.00285},
                    {"concrete 70 °F, air 70 °F, 70 %, 10 mph", -0.00383},
                    {"concrete 70 °F, air 70 °F, 70 %, 15 mph", -0.00382},
                    {"concrete 70 °F, air 70 °F, 70 %, 20 mph", -0.00580},
                    {"concrete 70 °F, air 70 °F, 90 %, 10 mph", -0.00061},
                    {"concrete 70 °F, air 70 °F, 50 %, 10 mph", -0.00306},
                    {"concrete 70 °F, air 70 °F, 30 %, 10 mph", 0.00072},
                    {"concrete 50 °F, air 50 °F, 70 %, 10 mph", 0.00252},
                    {"concrete 80 °F, air 80 °F, 70 %, 10 mph", 0.00424},
                    {"concrete 90 °F, air 90 °F, 70 %, 10 mph", 0.00190},
                    {"concrete 70 °F, air 80 °F, 70 %, 10 mph", 0.00434},
                    {"concrete 70 °F, air 50 °F, 70 %, 10 mph", 0.00235},
                    {"concrete 70 °F, air 30 °F, 70 %, 10 mph", -0.00165},
                    {"concrete 80 °F, air 40 °F, 100 %, 10 mph", 0.00082},
                    {"concrete 60 °F, air 40 °F, 100 %, 10 mph", -0.00315},
                    {"concrete 70 °F, air 40 °F, 50 %, 0 mph", -0.00134},
                    {"concrete 70 °F, air 40 °F, 50 %, 25 mph", -0.00398},
                    {"concrete 80 °F, air 70 °F, 50 %, 10 mph", -0.00116},
                    {"concrete 60 °F, air 70 °F, 50 %, 10 mph", -0.00513},
                    {"concrete 90 °F, air 90 °F, 10 %, 25 mph", -0.00576}}},
          {.what = "latent heat of evaporation",
           .in_words = "heat taken by drying",
           .why = "0.004 %.",
           .rows = {{"20 °C", 0.100}},
           .is_minor = true}};
}

std::vector<MissedCheck> sun_and_air() {
  return {{.what = "dew point",
           .in_words = "dew point",
           .why = "As good as Magnus's simple formula is.",
           .rows = {{"1 to 50 °C", 0.0544}},
           .is_minor = true},
          {.what = "relative humidity, share",
           .in_words = "humidity as a fraction",
           .why = "Magnus's simple formula again.",
           .rows = {{"1 to 50 °C", 0.001252}},
           .is_minor = true},
          {.what = "sun's azimuth, worked example",
           .in_words = "direction of the sun",
           .why = "The end of a shadow 20 ft long moves by a hundredth of an inch.",
           .rows = {{"17 October 2003", 0.00234}},
           .is_minor = true},
          {.what = "sun's distance",
           .in_words = "distance of the sun",
           .why = "0.02 % of its light.",
           .rows = {{"2024 to 2036, within 65° of the equator", 0.0001097}},
           .is_minor = true},
          {.what = "emissivity of a clear sky",
           .in_words = "emissivity of a clear sky",
           .why = "In the last digit; the source rounds on the way (from memory).",
           .rows = {{"dew point 283 K", -0.00052}},
           .is_minor = true},
          {.what = "air pressure by elevation",
           .in_words = "air pressure by elevation",
           .why = "A millionth.",
           .rows = {{"1000 m", -0.081}, {"2000 m", -0.076}},
           .is_minor = true}};
}

}  // namespace

// The most important for a plan come first.
const std::vector<MissedCheck>& does_not_meet() {
  static const std::vector<MissedCheck> list = [] {
    std::vector<MissedCheck> all;
    for (const auto& part : {finishing(), sawing(), setting(), drying(), sun_and_air()}) {
      std::ranges::copy(part, std::back_inserter(all));
    }
    return all;
  }();
  return list;
}

}  // namespace slabtide::test
