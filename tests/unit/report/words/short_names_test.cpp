#include "report/words/short_names.h"

#include <doctest/doctest.h>

#include "support/sample_job.h"

namespace slabtide {
namespace {

Job job_of(std::initializer_list<const char*> names) {
  Job job = test::sample_job({});
  for (const char* name : names) {
    Zone zone;
    zone.name = name;
    job.zones.push_back(zone);
  }
  return job;
}

TEST_CASE("a name with room stays as it is, a longer one loses its end") {
  const Job job = job_of({"walk", "apron behind the big red barn"});
  CHECK(short_names("walk", job) == "walk");
  CHECK(short_names("walk, north side", job) == "walk, north side");
  CHECK(short_names("apron behind the big red barn", job) == "apron behind the big…");
  CHECK(short_names("apron behind the big red barn, border", job) ==
        "apron behind the big…, border");
  CHECK(short_names("6 ft from the apron behind the big red barn end", job) ==
        "6 ft from the apron behind the big… end");
  CHECK(short_names("no zone of this job by any name", job) == "no zone of this job by any name");
}

TEST_CASE("names that would look alike lose the words they begin with") {
  const Job job = job_of({"Smith residence back patio north", "Smith residence back patio south"});
  CHECK(short_names("Smith residence back patio north", job) == "…north");
  CHECK(short_names("Smith residence back patio south", job) == "…south");
}

TEST_CASE("no letter is cut in two, wide ones take two columns") {
  const Job job = job_of({"東東東東東東東東東東東東"});
  CHECK(short_names(job.zones[0].name, job) == "東東東東東東東東東東…");
}

}  // namespace
}  // namespace slabtide
