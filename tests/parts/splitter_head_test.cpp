#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/prism_errors.hpp"
#include "parts/splitter_head.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

struct Lengths {
    double glass = 0;
    double air = 0;
    Point exit{0.0};
};

// From the entry collar along the middles of the faces to the seat: every origin lies on the optical axis.
Lengths lengths(const SplitterHead& head, Eye eye, Millimetres pupil_distance) {
    LayoutContext context;
    context.eye = eye;
    context.pupil_distance = pupil_distance;
    const PartLayout layout = head.layout(context);
    Lengths found;
    Point at{0.0};
    bool in_glass = false;
    for (const Surface& surface : layout.surfaces) {
        if (surface.name == "nose") continue;  // reaches forward, before the entry
        const Point next = surface.part_from_surface.origin;
        (in_glass ? found.glass : found.air) += glm::distance(at, next);
        at = next;
        if (surface.kind == SurfaceKind::refraction) in_glass = !surface.medium_after.empty();
    }
    CHECK_FALSE(in_glass);
    found.air += glm::distance(at, layout.part_from_exit.origin);
    found.exit = layout.part_from_exit.origin;
    return found;
}

SplitterHead random_head(Random& random) {
    SplitterHead head;
    head.prism_width = {random.between(10, 40)};
    head.arm_offset = {head.prism_width.value + random.between(0, 30)};
    head.entry_air = Millimetres{random.between(0, 40)};
    head.seat_height = Millimetres{random.between(1, 50)};
    head.hinge_low = {0};
    head.hinge_high = {80};
    return head;
}

SplitterHead random_sliding_head(Random& random) {
    SplitterHead head = random_head(random);
    head.mechanism = Mechanism::sliding;
    const double room = head.arm_offset.value - head.prism_width.value;
    if (random.chance(0.5)) head.slide = Millimetres{random.between(0, room)};
    return head;
}

PartLayout layout_at(const SplitterHead& head, Eye eye, Millimetres pupil_distance) {
    LayoutContext context;
    context.eye = eye;
    context.pupil_distance = pupil_distance;
    return head.layout(context);
}

int reflections(const PartLayout& layout) {
    return static_cast<int>(std::ranges::count_if(layout.surfaces, [](const Surface& surface) {
        return surface.kind == SurfaceKind::mirror || surface.kind == SurfaceKind::total_reflection;
    }));
}

}  // namespace

TEST_CASE("both arms of a head with matched glass are equal in glass, in air and in height") {
    Random random(44);
    for (int i = 0; i < 100; ++i) {
        const SplitterHead head = random_head(random);
        const Millimetres distance{random.between(0.3, 0.95) * 2 * head.arm_offset.value};
        const Lengths left = lengths(head, Eye::left, distance);
        const Lengths right = lengths(head, Eye::right, distance);
        const double A = head.prism_width.value;
        const double h = head.arm_offset.value;
        // Handbook tunnel lengths: cube A, right-angle prism A, block h; cube A, rhomboid A + h.
        CHECK(near(left.glass, 2 * A + h, rounding));
        CHECK(near(right.glass, 2 * A + h, rounding));
        CHECK(near(left.air, right.air, rounding));
        CHECK(near(left.exit.z, right.exit.z, rounding));
    }
}

TEST_CASE("a turn of the hinge brings the eyepieces to any pupil distance and changes no path") {
    Random random(45);
    for (int i = 0; i < 100; ++i) {
        const SplitterHead head = random_head(random);
        const double widest = 2 * head.arm_offset.value;
        const Lengths reference = lengths(head, Eye::left, Millimetres{widest});
        for (const double share : {0.95, 0.8, 0.6, 0.4}) {
            const Millimetres distance{share * widest};
            CHECK(head.reaches(distance));
            const Lengths left = lengths(head, Eye::left, distance);
            const Lengths right = lengths(head, Eye::right, distance);
            CHECK(near(left.exit.x, -distance.value / 2, rounding));
            CHECK(near(right.exit.x, distance.value / 2, rounding));
            CHECK(near(left.exit.y, right.exit.y, rounding));  // both eyes at one height
            CHECK(left.exit.y < 0);                            // the arms drop
            CHECK(near(left.glass, reference.glass, rounding));
            CHECK(near(left.air, reference.air, rounding));
            CHECK(near(right.air, reference.air, rounding));
        }
    }
}

TEST_CASE("pupil distance follows from the hinge and the hinge from the pupil distance") {
    SplitterHead head;
    head.arm_offset = Millimetres{37};
    // 2 x 37 mm x cos(angle), by hand.
    CHECK(near(head.pupil_distance_at(Degrees{0}).value, 74, 1e-12));
    CHECK(near(head.pupil_distance_at(Degrees{60}).value, 37, 1e-12));
    CHECK(near(head.pupil_distance_at(Degrees{45}).value, 74 * std::sqrt(0.5), 1e-12));
    for (double hinge = 6; hinge < 45; hinge += 3) {
        const Millimetres distance = head.pupil_distance_at(Degrees{hinge});
        CHECK(near(head.hinge_for(distance).value, hinge, 1e-10));
    }
}

TEST_CASE("beyond its ends the hinge stays at the nearer end and says that it does not reach") {
    const SplitterHead head;  // hinge from 5 to 45 degrees
    const Millimetres widest = head.pupil_distance_at(head.hinge_low);
    const Millimetres narrowest = head.pupil_distance_at(head.hinge_high);
    CHECK(head.reaches(widest));
    CHECK(head.reaches(narrowest));
    CHECK_FALSE(head.reaches(widest + Millimetres{0.01}));
    CHECK_FALSE(head.reaches(narrowest - Millimetres{0.01}));
    CHECK(head.hinge_for(Millimetres{85}) == head.hinge_low);
    CHECK(head.hinge_for(Millimetres{35}) == head.hinge_high);
    CHECK(near(lengths(head, Eye::right, Millimetres{85}).exit.x, widest.value / 2, rounding));
}

TEST_CASE("a compensator of another length than the rhomboid's glass makes the left arm differ by "
          "just that") {
    SplitterHead head;
    head.compensator = Millimetres{30};
    const Lengths left = lengths(head, Eye::left, Millimetres{63});
    const Lengths right = lengths(head, Eye::right, Millimetres{63});
    CHECK(near(right.glass - left.glass, head.arm_offset.value - 30, rounding));
    CHECK(near(left.air, right.air, rounding));
    head.compensator = Millimetres{0};
    CHECK(near(lengths(head, Eye::left, Millimetres{63}).glass, 2 * head.prism_width.value,
               rounding));
}

TEST_CASE("eyepieces stand upright on both arms whatever the hinge does") {
    const SplitterHead head;
    for (const Eye eye : both_eyes) {
        for (const double distance : {55.0, 63.0, 70.0}) {
            LayoutContext context;
            context.eye = eye;
            context.pupil_distance = Millimetres{distance};
            CHECK(head.layout(context).part_from_exit.axes == glm::dmat3(1.0));
        }
    }
}

TEST_CASE(
    "an error stated for a prism moves that prism's faces alone, and only while prisms stand off") {
    LayoutContext context;
    for (const Eye eye : both_eyes) {
        context.eye = eye;
        SplitterHead head;
        const PartLayout ideal = head.layout(context);
        head.rhomboid_errors.shift_x = 0.3;
        head.arm_prism_errors.shift_x = 0.3;
        const PartLayout kept = head.layout(context);
        head.prisms_stand = PrismsStand::slightly_off;
        const PartLayout moved = head.layout(context);
        REQUIRE(moved.surfaces.size() == ideal.surfaces.size());
        for (std::size_t i = 0; i < ideal.surfaces.size(); ++i) {
            const std::string& name = ideal.surfaces[i].name;
            CAPTURE(name);
            const Pose& before = ideal.surfaces[i].part_from_surface;
            CHECK(kept.surfaces[i].part_from_surface == before);
            const double shift =
                glm::distance(moved.surfaces[i].part_from_surface.origin, before.origin);
            const bool belongs = name.starts_with("rhomboid") || name.starts_with("arm prism")
                                 || name.starts_with("compensator");
            CHECK(near(shift, belongs ? 0.3 : 0, rounding));
        }
        CHECK(moved.part_from_exit == ideal.part_from_exit);  // the seats stay
    }
}

TEST_CASE("a prism turns about its own middle by the angle that is stated") {
    const Point middle{0, 3, 10};
    PrismErrors errors;
    errors.roll = 60;  // one degree
    const Pose pose = ideal_from_real(errors, middle);
    CHECK(near(glm::distance(pose.point_out(middle), middle), 0, rounding));
    CHECK(near(pose.direction_out({1, 0, 0}).y, std::sin(std::numbers::pi / 180), rounding));
    CHECK(ideal_from_real({}, middle) == Pose{});
}

TEST_CASE("sliding arms are equal in glass and height, and in air by half the pupil distance") {
    Random random(46);
    for (int i = 0; i < 100; ++i) {
        const SplitterHead head = random_sliding_head(random);
        const double A = head.prism_width.value;
        for (const double share : {0.0, 0.3, 0.5, 1.0}) {
            const Millimetres distance =
                head.narrowest() + (head.widest() - head.narrowest()) * share;
            CHECK(head.reaches(distance));
            for (const Eye eye : both_eyes) {
                CAPTURE(eye == Eye::left);
                const Lengths arm = lengths(head, eye, distance);
                // Handbook tunnel lengths: cube, right-angle prism and block, or cube and two prisms, A each.
                CHECK(near(arm.glass, 3 * A, rounding));
                CHECK(near(arm.air,
                           head.entry_air->value + distance.value / 2 - A + head.seat_height->value,
                           rounding));
                CHECK(near(arm.exit.x, (eye == Eye::left ? -0.5 : 0.5) * distance.value, rounding));
                CHECK(near(arm.exit.y, 0, rounding));
                CHECK(near(arm.exit.z, head.entry_air->value + 2 * A + head.seat_height->value,
                           rounding));
            }
        }
    }
}

TEST_CASE("either mechanism turns the light twice in both arms, so that no image is mirrored") {
    for (const Mechanism mechanism : {Mechanism::hinged, Mechanism::sliding}) {
        SplitterHead head;
        head.mechanism = mechanism;
        for (const Eye eye : both_eyes) {
            const PartLayout layout = layout_at(head, eye, Millimetres{63});
            CHECK(reflections(layout) == 2);
            CHECK(layout.part_from_exit.axes == glm::dmat3(1.0));
        }
    }
}

TEST_CASE(
    "arms slide from twice the offset inward, and without a stated slide until glass meets glass") {
    SplitterHead head;
    head.mechanism = Mechanism::sliding;
    head.prism_width = {25};
    head.arm_offset = {37};
    CHECK(near(head.widest().value, 74, rounding));
    CHECK(near(head.narrowest().value, 50, rounding));
    head.slide = Millimetres{10};
    CHECK(near(head.narrowest().value, 54, rounding));
    CHECK(near(head.middle().value, 64, rounding));
    CHECK(head.reaches(head.narrowest()));
    CHECK_FALSE(head.reaches(Millimetres{53.9}));
    CHECK_FALSE(head.reaches(Millimetres{74.1}));
    // Beyond its ends it stays at the nearer one.
    CHECK(near(lengths(head, Eye::right, Millimetres{40}).exit.x, 27, rounding));
    CHECK(near(lengths(head, Eye::left, Millimetres{80}).exit.x, -37, rounding));
    CHECK_FALSE(head.contradiction());
    head.slide = Millimetres{12.5};
    REQUIRE(head.contradiction());
    CHECK(head.contradiction()->find("slide_mm") != std::string::npos);
    head.mechanism = Mechanism::hinged;  // a slide that does not count contradicts nothing
    CHECK_FALSE(head.contradiction());
}

TEST_CASE("a light path is stated for the middle of a sliding head's range, and for any turn of a "
          "hinge") {
    SplitterHead head;
    for (const double distance : {55.0, 60.0, 66.0})
        CHECK(layout_at(head, Eye::left, Millimetres{distance}).beyond_stated == 0);
    head.mechanism = Mechanism::sliding;  // 50 to 74 mm
    for (const Eye eye : both_eyes) {
        CHECK(near(layout_at(head, eye, Millimetres{62}).beyond_stated, 0, rounding));
        CHECK(near(layout_at(head, eye, Millimetres{50}).beyond_stated, -6, rounding));
        CHECK(near(layout_at(head, eye, Millimetres{70}).beyond_stated, 4, rounding));
    }
}

TEST_CASE("the inner prism of a sliding head is cemented to the cube and goes with it") {
    SplitterHead head;
    head.mechanism = Mechanism::sliding;
    head.prisms_stand = PrismsStand::slightly_off;
    const PartLayout ideal = layout_at(head, Eye::right, Millimetres{63});
    const auto moved_faces = [&](PrismErrors SplitterHead::*prism) {
        SplitterHead off = head;
        (off.*prism).shift_z = 0.2;
        const PartLayout moved = layout_at(off, Eye::right, Millimetres{63});
        REQUIRE(moved.surfaces.size() == ideal.surfaces.size());
        std::string names;
        for (std::size_t i = 0; i < moved.surfaces.size(); ++i) {
            const double shift = glm::distance(moved.surfaces[i].part_from_surface.origin,
                                               ideal.surfaces[i].part_from_surface.origin);
            CHECK((near(shift, 0, rounding) || near(shift, 0.2, rounding)));
            if (shift > 0.1) names += moved.surfaces[i].name + ", ";
        }
        return names;
    };
    CHECK(moved_faces(&SplitterHead::cube_errors)
          == "cube entry face, cube interface, inner prism entry face, inner prism hypotenuse, "
             "inner prism exit face, ");
    CHECK(moved_faces(&SplitterHead::inner_prism_errors)
          == "inner prism entry face, inner prism hypotenuse, inner prism exit face, ");
    CHECK(moved_faces(&SplitterHead::outer_prism_errors)
          == "outer prism entry face, outer prism hypotenuse, outer prism exit face, ");
    CHECK(moved_faces(&SplitterHead::rhomboid_errors).empty());
}
