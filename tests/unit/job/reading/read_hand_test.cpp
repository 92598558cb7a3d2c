#include <doctest/doctest.h>

#include <string>

#include "job_text.h"

namespace slabtide::test {

TEST_CASE("hands are the first of the finishers, and all of them where no number is given") {
  const std::string hands = R"(
[[hand]]
name = "Ann"
pace = 1.25
from = "7:30 AM"
to = "15:00"
[[hand]]
simple_work = true
)";
  const Crew counted = read(plain_job() + hands).crew;
  CHECK(counted.finishers == 2);
  REQUIRE(counted.hands.size() == 2);
  CHECK(counted.hands[0].name == "Ann");
  CHECK(counted.hands[0].pace == 1.25);
  CHECK(counted.hands[0].from_min == 450);
  CHECK(counted.hands[0].to_min == 900);
  CHECK(!counted.hands[0].simple_work);
  CHECK(counted.hands[1].name == "B");
  CHECK(counted.hands[1].pace == 1.0);
  CHECK(!counted.hands[1].from_min);
  CHECK(counted.hands[1].simple_work);
  const Crew more = read(plain_job() + "\n[crew]\nfinishers = 5\n" + hands).crew;
  CHECK(more.finishers == 5);
  CHECK(more.hands.size() == 2);
}

}  // namespace slabtide::test
