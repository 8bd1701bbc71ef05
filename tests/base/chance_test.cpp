#include "base/chance.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("a chance is never told as certain") {
    CHECK(format_chance(0.5) == "50");
    CHECK(format_chance(0.994) == "99");
    CHECK(format_chance(0.9999) == "more than 99");
    CHECK(format_chance(1) == "more than 99");
    CHECK(format_chance(0.006) == "1");
    CHECK(format_chance(0) == "less than 1");
    CHECK(short_chance(0.5) == "50");
    CHECK(short_chance(1) == "> 99");
    CHECK(short_chance(0) == "< 1");
}
