#include <limits>
#include <sstream>

#include "support/near.hpp"

#include <doctest/doctest.h>

TEST_CASE("near takes its tolerance as it stands, whatever the size of the numbers") {
    CHECK(near(0.000550, 0.000558, 0.00001));
    CHECK_FALSE(near(0.000550, 0.000558, 0.000001));
    CHECK_FALSE(near(1e9, 1e9 + 1, 0.5));
    CHECK(near(2.0, 2.0, 0.0));
}

TEST_CASE("nothing is near a number that is none") {
    const double none = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(near(none, 1, 1000));
    CHECK_FALSE(near(1, none, 1000));
    CHECK_FALSE(near(none, none, 1000));
    CHECK_FALSE(near(1, 1, none));
}

TEST_CASE("near says what it compared") {
    std::ostringstream out;
    out << near(35.25, 35, 0.125);
    CHECK(out.str() == "35.25 against 35, apart by 0.25, allowed 0.125");
}
