#include "scene/tour/tour_frame.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("a step of a tour is found by name and number from 1, its caption filled") {
    const std::vector<Tour> tours{
        {"short",
         "A short one",
         {{StandardView::side, "Now {a}", ""}, {StandardView::top, "Then", ""}}}};
    const std::vector<TourQuote> quotes{{"a", "1 mm", ""}};
    const auto first = tour_frame(tours, "short", 1, quotes);
    REQUIRE(first);
    CHECK(first->caption == "Now 1 mm");
    CHECK(first->told.view == StandardView::side);
    CHECK(first->steps == 2);
    CHECK(tour_frame(tours, "short", 2, quotes)->caption == "Then");
    for (const int outside : {0, 3}) {
        const auto none = tour_frame(tours, "short", outside, quotes);
        REQUIRE_FALSE(none);
        CHECK(none.error().what.find("has steps 1 to 2") != std::string::npos);
    }
    const auto mistyped = tour_frame(tours, "shart", 1, quotes);
    REQUIRE_FALSE(mistyped);
    CHECK(mistyped.error().what.find("did you mean 'short'?") != std::string::npos);
    CHECK_FALSE(tour_frame(tours, "short", 1, {}));  // the caption quotes what is not there
}
