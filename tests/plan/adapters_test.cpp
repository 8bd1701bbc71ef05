#include "plan/adapters.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

ChainPart ring(Fitting front, Fitting rear, double length) {
    ChainPart part{.part = 0, .front = front, .rear = rear, .length = length};
    part.is_spacer = true;
    return part;
}

}  // namespace

TEST_CASE("ends that fit need no adapter, and neither do ends of which one is not stated") {
    const std::vector<ChainPart> chain;
    const Adapters adapters(chain);
    CHECK(adapters.between(Fitting::holder_2, Fitting::barrel_2, {}) == PartRow{});
    CHECK(adapters.between(Fitting::unstated, Fitting::barrel_2, {}) == PartRow{});
    CHECK_FALSE(adapters.between(Fitting::holder_2, Fitting::barrel_125, {}).has_value());
}

TEST_CASE("the shortest row of adapters is found, also where it has more pieces") {
    const std::vector<ChainPart> chain{
        ring(Fitting::barrel_2, Fitting::m42_male, 30),   // straight, and long
        ring(Fitting::barrel_2, Fitting::holder_125, 2),  // two that are shorter together
        ring(Fitting::barrel_125, Fitting::m42_male, 1),
        ring(Fitting::m42_female, Fitting::m42_male, 5),   // leads nowhere new
        ring(Fitting::unstated, Fitting::m42_male, 0.1)};  // nobody knows what it fits
    const Adapters adapters(chain);
    CHECK(adapters.between(Fitting::holder_2, Fitting::m42_female, {}) == PartRow{1, 2});
    // With one of the two taken the long one is left, with that taken, too, none.
    CHECK(adapters.between(Fitting::holder_2, Fitting::m42_female, {2}) == PartRow{0});
    CHECK_FALSE(adapters.between(Fitting::holder_2, Fitting::m42_female, {0, 2}).has_value());
}

TEST_CASE("of rows of one length the one of fewer pieces is taken, then the one that comes first") {
    const std::vector<ChainPart> chain{ring(Fitting::barrel_2, Fitting::holder_125, 1),
                                       ring(Fitting::barrel_125, Fitting::m42_male, 2),
                                       ring(Fitting::barrel_2, Fitting::m42_male, 3),
                                       ring(Fitting::barrel_2, Fitting::m42_male, 3)};
    const Adapters adapters(chain);
    CHECK(adapters.between(Fitting::holder_2, Fitting::m42_female, {}) == PartRow{2});
    CHECK(adapters.between(Fitting::holder_2, Fitting::m42_female, {2}) == PartRow{3});
}
