#include "job/records/read_journal.h"

#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "job/records/journal_line.h"
#include "slabtide/core/units.h"
#include "support/sample_job.h"

namespace slabtide::test {
namespace {

/// Two zones and one with a difficult name, poured from 08:00 on 14 May, Chicago time.
Job job_of_journal(UnitSystem units = UnitSystem::us) {
  Job job = sample_job({zone_named("landing", rectangle(0, 0, 4, 4)),
                        zone_named("walk", rectangle(5, 0, 4, 4)),
                        zone_named("a \"b\" # c\\\n東", rectangle(10, 0, 4, 4))});
  job.site.time_zone =
      TimeZone::from_posix_rule("America/Chicago", "CST6CDT,M3.2.0,M11.1.0").zone.value();
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(13));
  job.units = units;
  return job;
}

UtcTime utc(int day, int hour, int minute) {
  return {Date(2026, 5, static_cast<unsigned short>(day)),
          boost::posix_time::time_duration(hour, minute, 0)};
}

std::vector<Observation> observations_of(const std::string& text,
                                         const Job& job = job_of_journal()) {
  const Parsed<Journal> reading = read_journal(text, job);
  INFO(render_all(reading.diagnostics, "journal", text));
  REQUIRE(reading.ok());
  return reading.value->readings;
}

/// The message of the only error.
std::string journal_fault(const std::string& text, const Job& job = job_of_journal()) {
  const Parsed<Journal> reading = read_journal(text, job);
  CAPTURE(text);
  CHECK_FALSE(reading.ok());
  REQUIRE(reading.diagnostics.size() == 1);
  return reading.diagnostics[0].message;
}

}  // namespace

TEST_CASE("a line is the day, the hour, the reading, its value, the zone and a part") {
  const auto readings = observations_of(
      "# a remark\n"
      "\n"
      "2026-05-14 11:05  thumbprint landing\n"
      "2026-05-14 11:20\tsurface 88 °F  walk \"last 20 ft\"  # in the sun\r\n"
      "2026-05-14 7:55 concrete 63F\n"
      "2026-05-14T12:00-04:00 humidity 40 % walk\n"
      "2026-05-14 12:10  thumbprint walk \"by the (old) wall (wall3-2-of-2)\"\n"
      "2026-05-14 12:20  thumbprint walk \"by the wall (of the shed-2)\"\n");
  REQUIRE(readings.size() == 6);
  CHECK(readings[0].kind == ObservationKind::thumbprint);
  CHECK(readings[0].at == utc(14, 16, 5));
  CHECK(readings[0].zone == "landing");
  CHECK(readings[0].where == SourcePosition{3, 1});
  CHECK_FALSE(readings[0].value);
  CHECK(readings[1].part == "last 20 ft");
  CHECK(readings[1].value.value() == doctest::Approx(celsius_from_fahrenheit(88.0)));
  CHECK(readings[2].at == utc(14, 12, 55));
  CHECK(readings[2].zone.empty());
  CHECK(readings[1].part_id.empty());
  CHECK(readings[3].at == utc(14, 16, 0));
  CHECK(readings[3].value.value() == doctest::Approx(0.4));
  CHECK(readings[4].part == "by the (old) wall");
  CHECK(readings[4].part_id == "wall3-2-of-2");
  CHECK(readings[5].part == "by the wall (of the shed-2)");
  CHECK(readings[5].part_id.empty());
}

// Common practice, no source.
TEST_CASE("hours are read as a crew writes them") {
  for (const char* hour : {"noon", "12 noon", "1200", "12", "12 PM"}) {
    INFO(hour);
    for (const char* day : {"", "2026-05-14 "}) {
      CHECK(observations_of(std::string(day) + hour + " surface 80 degrees walk\n").at(0).at ==
            utc(14, 17, 0));
    }
  }
}

TEST_CASE("values are read in each of their units") {
  struct Row {
    const char* words;
    double value;
  };
  // Factors: NIST SP 811 (2008), appendix B.8, published; 1 knot is 1852 m an hour.
  for (const Row& row :
       {Row{"concrete 20 °C", 20.0}, Row{"concrete 20c", 20.0}, Row{"concrete 68 F", 20.0},
        Row{"wind 10 mph", 4.4704}, Row{"wind 4.5 m/s", 4.5}, Row{"wind 18 km/h", 5.0},
        Row{"wind 9 knots", 4.63}, Row{"air -5°C", -5.0}, Row{"humidity 100 %", 1.0}}) {
    const auto readings =
        observations_of(std::string("2026-05-14 11:05 ").append(row.words) + "\n");
    CHECK(readings.at(0).value.value() == doctest::Approx(row.value).epsilon(1e-9));
  }
}

TEST_CASE("what older journals call print-firm is the reading without a dent") {
  const auto readings = observations_of("2026-05-14 11:05 print-firm landing\n");
  CHECK(readings.at(0).kind == ObservationKind::print_firm);
  CHECK(observation_id(readings.at(0).kind) == "no-dent");
}

TEST_CASE("undo strikes the last line that counts, and the one before it") {
  const std::string two = "2026-05-14 11:05 thumbprint landing\n2026-05-14 11:10 thumbprint walk\n";
  CHECK(observations_of(two + "undo\n").size() == 1);
  CHECK(observations_of(two + "undo\n").at(0).zone == "landing");
  CHECK(observations_of(two + "undo\nundo\n").empty());
  CHECK(observations_of(two + "undo\n2026-05-14 11:12 no-dent walk\nundo\n").size() == 1);
  // A wrong line is struck out together with everything that was wrong about it.
  CHECK(observations_of(two + "2026-05-14 11:12 thumprint walk\nundo\n").size() == 2);
  CHECK(journal_fault("undo\n") == "there is nothing before it to undo");
  CHECK(journal_fault(two + "undo it\n") == "nothing follows an undo");
}

TEST_CASE("a last line without an end is told and not counted") {
  const std::string whole = "2026-05-14 11:05 thumbprint landing\n";
  const std::string text = whole + "2026-05-14 11:10 thumbprint walk";
  const Parsed<Journal> reading = read_journal(text, job_of_journal());
  REQUIRE(reading.ok());
  CHECK(reading.value->readings.size() == 1);
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics[0].severity == Severity::warning);
  CHECK(reading.diagnostics[0].where == SourcePosition{2, 1});
  CHECK(observations_of(whole + "  ").size() == 1);
  // The file after the next note.
  CHECK(observations_of(whole + "2026-05-14 11:1  # not finished\n" + whole).size() == 2);
}

TEST_CASE("what cannot be is refused") {
  const std::string day = "2026-05-14 ";
  CHECK(journal_fault("2026-05-14\n") == "the hour is missing");
  CHECK(journal_fault("tomorrow 11:05 thumbprint landing\n") ==
        "got 'tomorrow', expected the day and the hour");
  CHECK(journal_fault(day + "25:05 thumbprint landing\n") ==
        "got '2026-05-14 25:05', expected the day and the hour");
  CHECK(journal_fault(day + "11:05\n") == "missing");
  CHECK(journal_fault(day + "11:05 thumb-print landing\n") == "there is no reading 'thumb-print'");
  CHECK(journal_fault(day + "11:05 thumbprint\n") ==
        "missing: where was it? (thumbprint of 1/4 in)");
  CHECK(journal_fault(day + "11:05 thumbprint landnig\n") == "there is no zone 'landnig'");
  CHECK(journal_fault(day + "11:05 thumbprint landing a b\n") == "'b' is one word too many");
  CHECK(journal_fault(day + "11:05 concrete\n") == "its value is missing");
  CHECK(journal_fault(day + "11:05 concrete warm\n") == "got 'warm', expected a number");
  CHECK(journal_fault(day + "11:05 concrete 63\n") == "got the unit '', expected °F or °C");
  CHECK(journal_fault(day + "11:05 wind 8 landing\n") ==
        "got the unit 'landing', expected mph, m/s, km/h or knots");
  CHECK(journal_fault(day + "11:05 concrete 63 °C\n") == "got 63 °C, expected 0 to 50 °C");
  CHECK(journal_fault(day + "11:05 wind -8 mph\n") == "got -8 mph, expected 0 to 67.1 mph");
  CHECK(journal_fault(day + "11:05 humidity 140 %\n") == "got 140%, expected 1 to 100%");
  CHECK(journal_fault(day + "11:05 thumbprint \"landing\n") ==
        "the quotation marks are not closed");
  CHECK(journal_fault(day + "11:05 thumbprint \"a\\b\"\n") == "a backslash that means nothing");
  CHECK(journal_fault(day + "11:05 thumbprint land\"ing\"\n") ==
        "a quotation mark in the middle of a word");
}

TEST_CASE("readings stand near the pour, and not before the concrete") {
  CHECK(journal_fault("2026-05-13 11:05 thumbprint landing\n") ==
        "Wed, May 13, 2026, 11:05 AM is 21 h before the pour starts (Thu, May 14, 2026, 8:00 AM)");
  CHECK(journal_fault("2026-05-17 11:05 thumbprint landing\n") ==
        "Sun, May 17, 2026, 11:05 AM is 75 h after the pour starts (Thu, May 14, 2026, 8:00 AM)");
  CHECK(observations_of("2026-05-17 11:05 crack landing\n").size() == 1);
  CHECK(journal_fault("2026-05-14 07:30 thumbprint landing\n") ==
        "there was no concrete yet: the pour starts at 8:00 AM");
  CHECK(observations_of("2026-05-14 07:30 air 50 F\n2026-05-14 07:20 placed landing\n"
                        "2026-05-14 07:50 thumbprint landing\n")
            .size() == 3);
  CHECK(journal_fault("2026-05-14 08:50 thumbprint walk\n2026-05-14 09:10 placed walk\n") ==
        "there was no concrete yet: the zone was placed at 9:10 AM");
  CHECK(observations_of("2026-05-14 08:50 thumbprint landing\n2026-05-14 09:10 placed walk\n")
            .size() == 2);
  CHECK(journal_fault("2026-05-14 08:50 placed walk\n2026-05-14 09:10 placed walk\n") ==
        "it was already noted as placed at 8:50 AM");
}

TEST_CASE("hours are read with AM and PM too") {
  const std::vector<Observation> readings = observations_of(
      "11:05 AM thumbprint landing\n2026-05-14 11:10am thumbprint landing\n"
      "\"2026-05-14 1:05 PM\" thumbprint landing\n2026-05-14T1:10 pm thumbprint landing\n");
  REQUIRE(readings.size() == 4);
  CHECK(readings[0].at == utc(14, 16, 5));
  CHECK(readings[1].at == utc(14, 16, 10));
  CHECK(readings[2].at == utc(14, 18, 5));
  CHECK(readings[3].at == utc(14, 18, 10));
}

TEST_CASE("an hour alone is one of the pour, past midnight too") {
  Job job = job_of_journal();
  const auto at = [&job](int hour, int minute) {
    return clock_instant(boost::posix_time::time_duration(hour, minute, 0), job);
  };
  CHECK(at(5, 0) == utc(14, 10, 0));
  CHECK(at(4, 59) == utc(15, 9, 59));
  CHECK(at(23, 30) == utc(15, 4, 30));
  CHECK(observations_of("11:05 thumbprint landing\n", job).at(0).at == utc(14, 16, 5));
  job.pour.start = utc(15, 3, 0);  // 22:00
  CHECK(at(19, 30) == utc(15, 0, 30));
  CHECK(at(1, 0) == utc(15, 6, 0));
}

TEST_CASE("an hour alone is of the pour's own day unless it cannot be") {
  Job job = job_of_journal();
  // The saw cuts the next morning: before the pour there was nothing to cut.
  CHECK(observations_of("6:10 sawed landing\n", job).at(0).at == utc(15, 11, 10));
  CHECK(observations_of("14:00 sawed landing\n", job).at(0).at == utc(14, 19, 0));
  job.pour.start = utc(14, 6, 30);  // 1:30
  CHECK(clock_instant(boost::posix_time::time_duration(23, 5, 0), job) == utc(15, 4, 5));
}

TEST_CASE("an hour that the clocks skip or bring twice") {
  Job job = job_of_journal();
  job.pour.start = UtcTime(Date(2026, 11, 1), boost::posix_time::time_duration(4, 0, 0));
  const std::string twice = "2026-11-01 01:30 thumbprint landing\n";
  const Parsed<Journal> reading = read_journal(twice, job);
  REQUIRE(reading.ok());
  CHECK(reading.diagnostics.at(0).message == "that hour comes twice, the first is taken");
  const Observation& first = reading.value->readings.at(0);
  CHECK(journal_line(first, job) == "2026-11-01T01:30:00-05:00  thumbprint  landing\n");
  job.pour.start = UtcTime(Date(2026, 3, 8), boost::posix_time::time_duration(6, 0, 0));
  CHECK(journal_fault("2026-03-08 02:30 thumbprint landing\n", job) ==
        "there is no such hour that night: the clocks go forward over it");
}

TEST_CASE("every kind and every name is written as it is read") {
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::si}) {
    const Job job = job_of_journal(units);
    std::string text = journal_heading(job);
    std::vector<Observation> written;
    for (std::size_t i = 0; i < observation_kind_count; ++i) {
      const auto kind = static_cast<ObservationKind>(i);
      for (const Zone& zone : job.zones) {
        Observation reading{kind, utc(14, 15, static_cast<int>(i)), {}, zone.name, "", {}};
        const ObservationMeasure measure = observation_measure(kind);
        if (measure == ObservationMeasure::temperature) reading.value = 25.0;
        if (measure == ObservationMeasure::wind) reading.value = 4.4704;
        if (measure == ObservationMeasure::humidity) reading.value = 0.4;
        if (kind == ObservationKind::placed) reading.at = utc(14, 12, 30);
        if (zone.name == "walk") reading.part = "the \"far\" end";
        if (zone.name == "walk" && i % 2 == 1) reading.part_id = "along-2-of-2";
        text += journal_line(reading, job);
        written.push_back(std::move(reading));
      }
    }
    const auto read = observations_of(text, job);
    REQUIRE(read.size() == written.size());
    for (std::size_t i = 0; i < read.size(); ++i) {
      CHECK(read[i].kind == written[i].kind);
      CHECK(read[i].at == written[i].at);
      CHECK(read[i].zone == written[i].zone);
      CHECK(read[i].part == written[i].part);
      CHECK(read[i].part_id == written[i].part_id);
      CHECK(read[i].value.has_value() == written[i].value.has_value());
      // Written to a tenth of its unit: here at most a tenth of a degree, m/s or percent.
      if (read[i].value) CHECK(std::abs(*read[i].value - *written[i].value) < 0.06);
    }
  }
}

TEST_CASE("a journal of nonsense is given up, one of many readings is not") {
  std::string nonsense;
  std::string many;
  for (int i = 0; i < 3000; ++i) {
    nonsense += "nonsense\n";
    many += "2026-05-14 11:05 thumbprint landing\n";
  }
  CHECK(read_journal(nonsense, job_of_journal()).diagnostics.size() == 50);
  CHECK(observations_of(many).size() == 3000);
}

}  // namespace slabtide::test
