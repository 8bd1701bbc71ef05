#include <cmath>

#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "scene/handles/handle.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

template <class Kind>
std::size_t part_with(const Setup& setup) {
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (setup.parts[i].body.is<Kind>()) return i;
    }
    FAIL("no such part");
    return 0;
}

Setup with_spacer(Setup setup, double length) {
    setup.parts[part_with<Spacer>(setup)].body.get<Spacer>().length = {length};
    return setup;
}

}  // namespace

TEST_CASE("a handle stands on what its length moves") {
    const Setup setup = with_spacer(cured_setup(), 14);
    const Report report = report_of(setup, 16);
    const auto spacers = handles_of(setup, report, part_with<Spacer>(setup));
    REQUIRE(spacers.size() == 1);
    CHECK(spacers[0].length.key == "length_mm");
    CHECK(near(glm::distance(spacers[0].place(), spacers[0].stays), 14, rounding));
    const auto drawtubes = handles_of(setup, report, part_with<Focuser>(setup));
    REQUIRE(drawtubes.size() == 1);
    CHECK(near(glm::distance(drawtubes[0].place(), drawtubes[0].stays),
               report.budget.drawtube.value, rounding));
    const auto lenses = handles_of(setup, report, part_with<Shifter>(setup));
    REQUIRE(lenses.size() == 1);
    CHECK(near(glm::distance(lenses[0].place(), lenses[0].stays), 5, rounding));  // lens_offset_mm
    CHECK(handles_of(setup, report, part_with<PrismDiagonal>(setup)).empty());
    CHECK(handles_of(setup, report, part_with<Refractor>(setup)).empty());
}

TEST_CASE("the arms' handles stand on both eyepieces, a pupil distance apart") {
    const Setup setup = short_setup();
    const Report report = report_of(setup, 16);
    const auto arms = handles_of(setup, report, part_with<SplitterHead>(setup));
    REQUIRE(arms.size() == 2);
    CHECK(near(glm::distance(arms[0].place(), arms[1].place()), 63, 1e-6));  // Observer's default
    CHECK(arms[0].length.part == part_with<Observer>(setup));
    // Hinge from 5 to 45 degrees with arms of 37 mm: 2 * 37 * cos: 52.33 to 73.72 mm.
    CHECK(near(arms[0].length.low, 52.326, 1e-3));
    CHECK(near(arms[0].length.high, 73.718, 1e-3));
    CHECK(handles_of(setup, report, part_with<Observer>(setup)).size() == 2);
}

TEST_CASE("a knob stands off its body, its arrows along the line as it is seen") {
    const Setup setup = with_spacer(short_setup(), 20);
    const Report report = report_of(setup, 16);
    const Handle handle = handles_of(setup, report, part_with<Spacer>(setup)).at(0);
    const Viewport seen_in{1000, 700};
    Camera camera;  // from the side, light running to the right
    camera.target = glm::vec3(handle.place());
    camera.distance_mm = 500;
    const auto view = view_of(handle, camera, seen_in, 30);
    REQUIRE(view.has_value());
    CHECK(near(view->along.x, 1, 1e-4));
    CHECK(near(view->place.x, 500, 0.01));  // single precision
    CHECK(near(glm::distance(view->rim, view->knob), 30, 0.01));
    CHECK(view->knob.y > view->rim.y);  // below: the diagonal turns the light up
    CHECK_FALSE(view->goes_by_height);
    camera.yaw_rad = static_cast<float>(std::acos(-1.0) / 2);  // against the light
    CHECK(view_of(handle, camera, seen_in, 30)->goes_by_height);
    camera.target += glm::vec3(4000, 0, 0);
    CHECK_FALSE(view_of(handle, camera, seen_in, 30).has_value());
}
