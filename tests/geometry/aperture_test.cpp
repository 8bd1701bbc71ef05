#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/contract.hpp"
#include "geometry/aperture.hpp"
#include "reference/vignetting.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

using namespace beamfork;

namespace {

namespace bg = boost::geometry;
using BoostPoint = bg::model::d2::point_xy<double>;
using BoostPolygon = bg::model::polygon<BoostPoint, false>;  // counter-clockwise, closed

// Corners on an ellipse at rising angles: always convex, and about the origin when the angles go all round.
Polygon random_convex(Random& random) {
    std::vector<double> angles;
    const std::size_t count = 3 + random.below(6);
    for (std::size_t i = 0; i < count; ++i) {
        angles.push_back((static_cast<double>(i) + random.between(0.1, 0.9)) * 2 * std::numbers::pi
                         / static_cast<double>(count));
    }
    Polygon polygon;
    const double a = random.between(3, 20);
    const double b = random.between(3, 20);
    for (const double angle : angles)
        polygon.corners.emplace_back(a * std::cos(angle), b * std::sin(angle));
    return polygon;
}

BoostPolygon to_boost(const Polygon& polygon) {
    BoostPolygon result;
    for (const auto& corner : polygon.corners)
        bg::append(result.outer(), BoostPoint{corner.x, corner.y});
    bg::append(result.outer(), BoostPoint{polygon.corners.front().x, polygon.corners.front().y});
    return result;
}

}  // namespace

TEST_CASE("light on the rim of an opening passes, light just outside does not") {
    CHECK(contains(Circle{12.5}, {12.5, 0}));
    CHECK(contains(Circle{12.5}, {7.5, -10}));
    CHECK_FALSE(contains(Circle{12.5}, {12.5000001, 0}));
    const Aperture square = rectangle(25, 30);
    CHECK(contains(square, {12.5, 15}));
    CHECK(contains(square, {-12.5, 0}));
    CHECK_FALSE(contains(square, {12.5000001, 0}));
    CHECK_FALSE(contains(square, {0, -15.0000001}));
    CHECK(contains(Unbounded{}, {1e9, -1e9}));
}

TEST_CASE("a polygon lets through what a general-purpose geometry library finds within it") {
    Random random(21);
    int within = 0;
    for (int i = 0; i < 200; ++i) {
        const Polygon polygon = random_convex(random);
        const BoostPolygon other = to_boost(polygon);
        for (int j = 0; j < 100; ++j) {
            const glm::dvec2 at{random.between(-20, 20), random.between(-20, 20)};
            const bool expected = bg::within(BoostPoint{at.x, at.y}, other);
            within += expected ? 1 : 0;
            CHECK(contains(polygon, at) == expected);
        }
    }
    CHECK(within > 2000);  // the comparison saw both sides
    CHECK(within < 18000);
}

TEST_CASE(
    "the inner radius of a polygon is the distance to its outline in a general-purpose library") {
    Random random(22);
    for (int i = 0; i < 200; ++i) {
        const Polygon polygon = random_convex(random);
        const BoostPolygon other = to_boost(polygon);
        if (!bg::within(BoostPoint{0, 0}, other)) continue;
        // The nearest edge's line can be nearer than the edge itself only outside the polygon's own corners.
        const bg::model::linestring<BoostPoint> rim(other.outer().begin(), other.outer().end());
        CHECK(near(inner_radius(polygon), bg::distance(BoostPoint{0, 0}, rim), 1e-12));  // rounding
    }
    CHECK(inner_radius(rectangle(24, 30)) == 12);
    CHECK(inner_radius(Circle{7}) == 7);
    CHECK(std::isinf(inner_radius(Unbounded{})));
}

TEST_CASE("outlines run counter-clockwise: their signed area is the opening's area") {
    const auto area = [](const std::vector<glm::dvec2>& corners) {
        return bg::area(to_boost(Polygon{corners}));  // positive for counter-clockwise
    };
    CHECK(near(area(outline(rectangle(24, 30), 4)), 720, 1e-9));
    // A regular n-gon in a circle of radius R has the area n R^2 sin(2 pi / n) / 2.
    CHECK(near(area(outline(Circle{10}, 64)), 32 * 100 * std::sin(std::numbers::pi / 32), 1e-9));
    CHECK(outline(Unbounded{}, 64).empty());
}

TEST_CASE("a rectangle without width breaks the contract") {
    CHECK_THROWS_AS(rectangle(0, 10), BrokenContract);
    CHECK_THROWS_AS(rectangle(10, -1), BrokenContract);
}

TEST_CASE("a round cone passes a round hole by the area of two overlapping circles") {
    for (const auto& row : reference::circle_overlaps) {
        CAPTURE(row.hole);
        CAPTURE(row.offset);
        CHECK(near(overlap_share(row.hole / 2, row.cone / 2, row.offset), row.share,
                   1e-6));  // last printed digit
    }
}

TEST_CASE("the area two circles share does not depend on which of them is the hole") {
    Random random(23);
    for (int i = 0; i < 500; ++i) {
        const double a = random.between(1, 20);
        const double b = random.between(1, 20);
        const double h = random.between(0, 45);
        CHECK(near(overlap_share(a, b, h) * b * b, overlap_share(b, a, h) * a * a,
                   1e-9));  // rounding of 400
        CHECK(overlap_share(a, b, h) >= 0);
        CHECK(overlap_share(a, b, h) <= 1);
        CHECK(overlap_share(a, b, h + 0.1) <= overlap_share(a, b, h) + 1e-12);
    }
}

TEST_CASE("a hole in the middle of a wider cone passes the ratio of their areas") {
    CHECK(near(overlap_share(5, 10, 0), 0.25, 1e-15));
    CHECK(near(overlap_share(5, 10, 3), 0.25, 1e-15));
    CHECK(overlap_share(10, 5, 0) == 1);
}
