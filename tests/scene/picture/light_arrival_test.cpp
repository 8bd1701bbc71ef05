// The optical path that light in motion follows: against closed forms and the train's own list of lengths.
#include <cmath>

#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "scene/picture/light_arrival.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr double path_rounding = 1e-9;  // mm, of a sum of some thirty lengths near 1 m

// Index times length along the axis behind the drawtube's rear face: the list from which focus is solved.
double optical_length(const EyePath& path) {
    double sum = 0;
    for (const AxialStep& step : path.steps)
        sum += step.length * step.index[primary_wavelength];
    return sum;
}

double left_longer(const LightArrival& arrival) {
    return from_splitter(arrival, Eye::left) - from_splitter(arrival, Eye::right);
}

SplitterHead& head_of(Setup& setup) {
    for (Part& part : setup.parts) {
        if (auto* head = part.body.as<SplitterHead>()) return *head;
    }
    throw std::logic_error("no head");
}

}  // namespace

TEST_CASE("light comes to each field stop when the lengths of the focus budget say so") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        const Train train = report_of(setup).train;
        const LightArrival arrival = light_arrival(train);
        REQUIRE(arrival.is_known);
        for (const Eye eye : both_eyes) {
            const EyePath& path = train.path(eye);
            // The drawtube's rear face, where the list begins, stands in air behind the objective at z = 0.
            const double to_rear_face = path.steps.front().from.z;
            CHECK(near(arrival.at_stop_mm[eye == Eye::left ? 0 : 1],
                       to_rear_face + optical_length(path), 1e-8));
        }
        CHECK(arrival.at_splitter_mm > 0);
        CHECK(arrival.at_splitter_mm < arrival.at_stop_mm[0]);
    }
}

TEST_CASE("behind equal arms both eyes get it at once, without the compensator the right one gets "
          "it first or last as much as the glass is missing") {
    Setup setup = short_setup();
    const LightArrival equal = light_arrival(report_of(setup).train);
    CHECK(near(left_longer(equal), 0, path_rounding));
    for (const float front : {0.0F, 60.0F, 100.0F, 200.0F})
        CHECK(near(glow_at(equal.at_stop_mm[0], front), glow_at(equal.at_stop_mm[1], front), 1e-6));
    CHECK(arrival_words(equal, 120).verdict == "Equal paths: it comes to both eyes at once.");

    head_of(setup).compensator = Millimetres{0};
    head_of(setup).seat_travel = Millimetres{0};  // seats farther out would make up for some of it
    const Report report = report_of(setup);
    const LightArrival unequal = light_arrival(report.train);
    const double expected = optical_length(report.train.path(Eye::left))
                            - optical_length(report.train.path(Eye::right));
    REQUIRE(std::abs(expected) > 5);
    CHECK(near(left_longer(unequal), expected, path_rounding));
    // The block that is gone was as long as the arms' offset: the left light lacks its n d.
    constexpr double n_e = 1.571249;  // N-BAK4: tests/reference/glass_indices.hpp
    const double offset = head_of(setup).arm_offset.value;
    CHECK(near(left_longer(unequal), -n_e * offset, 5e-7 * offset));  // half its last printed digit
    const std::string verdict = arrival_words(unequal, 120).verdict;
    CHECK(verdict.starts_with("Right is 58.14 mm longer"));
}

TEST_CASE("a seat that stands farther out makes that eye's path longer by so much air") {
    Setup setup = short_setup();
    for (Part& part : setup.parts) {
        if (auto* observer = part.body.as<Observer>()) observer->left = {2};
    }
    const Train train = report_of(setup).train;
    const double farther =
        train.path(Eye::left).seat_shift - train.path(Eye::right).seat_shift;  // in air: n = 1
    REQUIRE(std::abs(farther) > 0.5);
    CHECK(near(left_longer(light_arrival(train)), farther, path_rounding));
}

TEST_CASE("a difference is told with the time it really takes") {
    LightArrival arrival;
    arrival.is_known = true;
    // Light takes 10 ps for 2.99792458 mm: the definition of the metre.
    arrival.at_stop_mm = {102.99792458, 100};
    CHECK(arrival_words(arrival, 120).verdict == "Left is 3.00 mm longer: in truth 10.0 ps later.");
    // 299 792 458 000 mm/s over 299.792458 mm/s.
    CHECK(arrival_words(arrival, 299.792458F).pace == "Light, 1.0 thousand million times slower");
}

TEST_CASE("packets go on at their pace and follow each other evenly") {
    CHECK(near(packets_after(0, 120, 0.5), 60, 1e-4));
    CHECK(near(packets_after(200, 120, 0.5), 260 - packet_spacing_mm, 1e-4));
    CHECK(near(packets_after(10, 100, 100 * packet_spacing_mm / 100), 10, 1e-2));
    CHECK(glow_at(150, 150) == 1);
    CHECK(glow_at(150 + 3 * packet_spacing_mm, 150)
          == 1);                       // an earlier one has come at the same time
    CHECK(glow_at(150, 149) < 0.01F);  // not yet
    CHECK(glow_at(150, 180) < glow_at(150, 160));
}

TEST_CASE("the ribbons carry the path on without a gap and start before the objective") {
    const Frame frame = build_frame(cured_setup(), report_of(cured_setup()));
    REQUIRE(frame.arrival.is_known);
    int at_stop = 0;
    float first = 0;
    for (const LightRibbon& ribbon : frame.light) {
        const float length = glm::distance(ribbon.from, ribbon.to);
        const float path = ribbon.to_path_mm - ribbon.from_path_mm;
        first = std::min(first, ribbon.from_path_mm);
        // Never faster than light in air, never slower than in glass of index 2. A lens's own delay is not drawn:
        // up to 2 mm for an objective of f/7, whose light leaves the sphere about the focus.
        CHECK(path > length - 2.5F);
        CHECK(path < 2 * length + 0.01F);
        if (glm::distance(ribbon.to, frame.arrival.stop[0]) > 1 || ribbon.strength < 0.45F)
            continue;
        // Ideal optics but for a few waves of the glass's spherical aberration; floats near 1 m.
        CHECK(near(ribbon.to_path_mm, frame.arrival.at_stop_mm[0], 0.02));
        ++at_stop;
    }
    CHECK(first < -50);
    CHECK(at_stop > 30);
}
