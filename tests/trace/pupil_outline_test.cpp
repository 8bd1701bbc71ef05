// The lit share of a pupil within bounds of simple shape, against closed forms.
#include <cmath>
#include <numbers>

#include "support/near.hpp"
#include "trace/pupil_outline.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// By looking along 64 azimuths, or 128: a fifth of what is agreed on for the light of a field point.
constexpr double by_azimuths = 1e-3;

PupilCubic linear(double constant, double x, double y) {
    PupilCubic cubic;
    cubic.terms[0] = constant;
    cubic.terms[1] = x;
    cubic.terms[2] = y;
    return cubic;
}

PupilBound round_bound(PupilBound::Shape shape, glm::dvec2 centre, double radius) {
    PupilBound bound;
    bound.shape = shape;
    bound.u = linear(-centre.x / radius, 1 / radius, 0);
    bound.v = linear(-centre.y / radius, 0, 1 / radius);
    return bound;
}
PupilBound round_opening(glm::dvec2 centre, double radius) {
    return round_bound(PupilBound::Shape::disc, centre, radius);
}
PupilBound round_block(glm::dvec2 centre, double radius) {
    return round_bound(PupilBound::Shape::block, centre, radius);
}
PupilBound side(double constant, double x, double y) {
    PupilBound bound;
    bound.u = linear(constant, x, y);
    return bound;
}

// Area common to circles of radii R and r whose middles are d apart, over that of the one of radius 1 (E. W. Weisstein,
// "Circle-Circle Intersection", MathWorld, Eq. 14).
double overlap(double R, double d) {
    constexpr double r = 1;
    if (d >= R + r) return 0;
    if (d <= std::abs(R - r)) return std::min(1.0, R * R);
    const double area = r * r * std::acos((d * d + r * r - R * R) / (2 * d * r))
                        + R * R * std::acos((d * d + R * R - r * r) / (2 * d * R))
                        - std::sqrt((-d + r + R) * (d + r - R) * (d - r + R) * (d + r + R)) / 2;
    return area / std::numbers::pi;
}

// What a chord at the distance h from the middle leaves of a circle of radius 1, on the middle's side
// (E. W. Weisstein, "Circular Segment", MathWorld, Eq. 9: the segment is R^2 acos(h / R) - h sqrt(R^2 - h^2)).
double beside_chord(double h) {
    return 1 - (std::acos(h) - h * std::sqrt(1 - h * h)) / std::numbers::pi;
}

}  // namespace

TEST_CASE("without bounds the whole pupil is lit, and nothing is in doubt") {
    const PupilLight light = pupil_light({});
    CHECK(light.lit == 1);
    CHECK(light.doubt == 0);
}

TEST_CASE("a bound that no light passes leaves none") {
    const std::vector bounds{side(-1, 0.1, 0)};
    const PupilLight light = pupil_light(bounds);
    CHECK(light.lit == 0);
    CHECK(near(light.lost[0], 1, rounding));
}

TEST_CASE("a bound beyond the pupil takes nothing") {
    for (const PupilBound& bound :
         {round_opening({0.3, 0}, 1.31), side(1.01, 0.6, 0.8), round_block({0, 3}, 1.9)}) {
        const std::vector bounds{bound};
        CHECK(pupil_light(bounds).lit == 1);
    }
}

TEST_CASE("a round opening leaves what two circles have in common") {
    for (const double radius : {0.2, 0.5, 0.9, 1.0, 1.4, 3.0}) {
        for (double apart = 0; apart < radius + 1.2; apart += 0.07) {
            for (const double turn : {0.0, 0.4, 2.0}) {
                CAPTURE(radius);
                CAPTURE(apart);
                const std::vector bounds{
                    round_opening(apart * glm::dvec2{std::cos(turn), std::sin(turn)}, radius)};
                CHECK(near(pupil_light(bounds).lit, overlap(radius, apart), by_azimuths));
            }
        }
    }
}

TEST_CASE("an obstruction takes what two circles have in common") {
    for (const double radius : {0.1, 0.3, 0.6}) {
        for (double apart = 0; apart < radius + 1.2; apart += 0.13) {
            CAPTURE(radius);
            CAPTURE(apart);
            const std::vector bounds{round_block({0.6 * apart, 0.8 * apart}, radius)};
            const PupilLight light = pupil_light(bounds);
            // From beside it an obstruction's edge is touched by azimuths, which cost some exactness.
            CHECK(near(light.lit, 1 - overlap(radius, apart), 1e-3));
            CHECK(near(light.lost[0], overlap(radius, apart), 1e-3));
        }
    }
}

TEST_CASE("a straight side cuts off a segment of the pupil") {
    for (double h = -0.98; h < 1; h += 0.08) {
        for (double turn = 0; turn < 6; turn += 0.31) {
            CAPTURE(h);
            CAPTURE(turn);
            const std::vector bounds{side(h, std::cos(turn), std::sin(turn))};
            CHECK(near(pupil_light(bounds).lit, beside_chord(h), by_azimuths));
        }
    }
}

TEST_CASE("a square within the pupil leaves its own area") {
    for (const double turn : {0.0, 0.2, 0.7}) {
        const double c = std::cos(turn);
        const double s = std::sin(turn);
        const std::vector bounds{side(0.5, c, s), side(0.5, -c, -s), side(0.5, -s, c),
                                 side(0.5, s, -c)};
        CHECK(near(pupil_light(bounds).lit, 1 / std::numbers::pi, by_azimuths));
    }
}

TEST_CASE("light ends at the first bound that stops it") {
    const std::vector wide_first{round_opening({0, 0}, 0.8), round_opening({0, 0}, 0.6)};
    const PupilLight one = pupil_light(wide_first);
    CHECK(near(one.lost[0], 1 - 0.64, by_azimuths));
    CHECK(near(one.lost[1], 0.64 - 0.36, by_azimuths));
    CHECK(near(one.lit, 0.36, by_azimuths));
    const std::vector narrow_first{round_opening({0, 0}, 0.6), round_opening({0, 0}, 0.8)};
    const PupilLight other = pupil_light(narrow_first);
    CHECK(near(other.lost[0], 0.64, by_azimuths));
    CHECK(other.lost[1] == 0);
    // What an opening has taken before is not the obstruction's.
    const std::vector hole{round_opening({0.5, 0}, 0.7), round_block({0, 0}, 0.3)};
    CHECK(near(pupil_light(hole).lost[1], 0.09 - 0.09 * (1 - overlap(0.7 / 0.3, 0.5 / 0.3)), 1e-3));
}

TEST_CASE("what is lit and what is lost make up the whole") {
    const std::vector bounds{round_block({0.1, 0}, 0.3), round_opening({0.4, 0.2}, 1),
                             side(0.2, -0.5, 0.9), round_opening({-0.6, 0}, 1.1)};
    const PupilLight light = pupil_light(bounds);
    double sum = light.lit;
    for (const double lost : light.lost)
        sum += lost;
    CHECK(near(sum, 1, 1e-12));
}

TEST_CASE("a bound with a gate holds on the gate's side alone") {
    PupilBound dark = side(-1, 0, 0.1);
    dark.gate = linear(0, 1, 0);
    const std::vector bounds{dark};
    CHECK(near(pupil_light(bounds).lit, 0.5, by_azimuths));
}

TEST_CASE("doubt is the edge's length times how far it may be off") {
    std::vector bounds{round_opening({0, 0}, 0.5)};
    bounds[0].u.residual = 0.01;  // of 1 at the edge: the edge may be off by 0.01 * 0.5
    CHECK(near(pupil_light(bounds).doubt, 2 * 0.5 * 0.005, 1e-4));
    bounds.insert(bounds.begin(), round_opening({0, 0}, 0.3));  // light no longer meets that edge
    CHECK(pupil_light(bounds).doubt < 1e-6);
}

TEST_CASE("a bound that bends more than it moves is not followed") {
    std::vector bounds{side(0.1, 0.5, 0)};
    bounds[0].u.terms[3] = -0.6;
    CHECK(std::isinf(pupil_light(bounds).doubt));
}
