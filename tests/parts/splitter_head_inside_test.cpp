// A head of which a leaflet states light path and prism width: what is left of the path for air is shared out by hand
// beside each value. Glass counts its length over its index (plane-parallel plate, t / n: W. J. Smith, Modern Optical
// Engineering, 4th ed., sec. 4.8).
#include <cmath>

#include "parts/splitter_head.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr double n_e = 1.571249;  // N-BAK4 at 546.07 nm, as in reference/glass_indices.hpp
constexpr double last_digit_of_index = 1e-4;  // mm: 5e-7 of index in 100 mm of glass

SplitterHead stated(double path) {
    SplitterHead head;
    head.prism_width = {25};
    head.arm_offset = {37};
    head.glass = "N-BAK4";
    head.stated_light_path = Millimetres{path};
    return head;
}

// Of the head as it is laid out: along the middles of the left arm's faces, air as it is and glass over its index.
double laid_out_path(const SplitterHead& head, Millimetres pupil_distance) {
    const PartLayout layout = head.layout({.eye = Eye::left, .pupil_distance = pupil_distance});
    double path = 0;
    Point at{0.0};
    double index = 1;
    for (const Surface& surface : layout.surfaces) {
        if (surface.name == "nose") continue;  // before the entry face
        path += glm::distance(at, surface.part_from_surface.origin) / index;
        at = surface.part_from_surface.origin;
        if (surface.kind == SurfaceKind::refraction) index = surface.medium_after.empty() ? 1 : n_e;
    }
    return path + glm::distance(at, layout.part_from_exit.origin);
}

}  // namespace

TEST_CASE("a head of 98 mm shares what its glass leaves between cube and seat as 14 to 30") {
    // Glass 2 x 25 + 37 = 87 mm counts 87 / 1.571249 = 55.370; between the prisms are 37 - 25 = 12 mm; of 98 mm
    // 30.630 are left: 14/44 of it before the cube, 30/44 below the seat.
    const HeadInside inside = stated(98).inside();
    CHECK(near(inside.entry_air.value, 9.746, 5e-4));
    CHECK(near(inside.seat_height.value, 20.884, 5e-4));
    // 111.370 mm is the path of the usual lengths.
    CHECK(near(stated(111.370).inside().entry_air.value, 14, 5e-4));
    CHECK(near(stated(111.370).inside().seat_height.value, 30, 5e-4));
    CHECK(SplitterHead{}.inside().entry_air == Millimetres{14});
    CHECK(SplitterHead{}.inside().seat_height == Millimetres{30});
}

TEST_CASE("every usual head from 95 to 140 mm has an inside that gives just the stated path") {
    Random random(1301);
    for (int i = 0; i < 300; ++i) {
        SplitterHead head = stated(random.between(95, 140));
        head.prism_width = {random.between(20, 30)};
        head.arm_offset = {head.prism_width.value + random.between(7, 13)};
        CAPTURE(head.stated_light_path->value);
        CAPTURE(head.prism_width.value);
        CHECK(near(laid_out_path(head, Millimetres{63}), head.stated_light_path->value,
                   last_digit_of_index));
        CHECK(head.inside().entry_air >= Millimetres{2});
        CHECK(head.inside().seat_height >= Millimetres{5});
    }
}

TEST_CASE("a sliding head has its stated path in the middle of its range") {
    SplitterHead head = stated(104);
    head.mechanism = Mechanism::sliding;  // 50 to 74 mm apart
    CHECK(near(laid_out_path(head, Millimetres{62}), 104, last_digit_of_index));
    CHECK(near(laid_out_path(head, Millimetres{70}), 108, last_digit_of_index));  // half of 8 more
}

TEST_CASE("a stated length stays, and the other one takes what is left") {
    SplitterHead head = stated(98);
    head.seat_height = Millimetres{26};  // 30.630 - 26
    CHECK(head.inside().seat_height == Millimetres{26});
    CHECK(near(head.inside().entry_air.value, 4.630, 5e-4));
    head.seat_height.reset();
    head.entry_air = Millimetres{3};  // 30.630 - 3
    CHECK(head.inside().entry_air == Millimetres{3});
    CHECK(near(head.inside().seat_height.value, 27.630, 5e-4));
    head.seat_height = Millimetres{30};
    CHECK(head.inside().entry_air == Millimetres{3});
    CHECK(head.inside().seat_height == Millimetres{30});
    // The block in the left arm is part of its path: 20 instead of 37 mm are 17 / 1.571249 = 10.819 less.
    head = stated(98);
    head.compensator = Millimetres{20};
    const HeadInside inside = head.inside();
    CHECK(near((inside.entry_air + inside.seat_height).value, 30.630 + 10.819, 1e-3));
}

TEST_CASE("cube and seat keep room of their own: what does not fit is left over") {
    // 67.370 mm of glass and air between prisms; 2 mm before the cube and 5 below the seat are the least.
    const HeadInside tight = stated(74.8).inside();  // 7.430 mm
    CHECK(near((tight.entry_air + tight.seat_height).value, 7.430, 5e-4));
    const HeadInside impossible = stated(70).inside();
    CHECK(impossible.entry_air == Millimetres{2});
    CHECK(impossible.seat_height == Millimetres{5});
    const HeadInside vast = stated(400).inside();
    CHECK(vast.entry_air <= Millimetres{150});
    CHECK(vast.seat_height <= Millimetres{150});
}

TEST_CASE("how deep the first glass may stand: stated, not at all deeper; else all air but the "
          "seat's least") {
    CHECK(near(stated(98).inside().deepest_cube.value, 25.630, 5e-4));  // 30.630 - 5
    SplitterHead head = stated(98);
    head.seat_height = Millimetres{26};
    CHECK(near(head.inside().deepest_cube.value, 4.630, 5e-4));
    head.entry_air = Millimetres{4};
    CHECK(head.inside().deepest_cube == Millimetres{4});
    const PartLayout open = stated(98).layout({});
    CHECK(open.unstated.first_glass);
    CHECK(open.unstated.last_glass);
    CHECK(near(open.unstated.spare, 25.630 - 9.746, 1e-3));
    CHECK_FALSE(head.layout({}).unstated.any());
}
