// The painted objective: every ray bears the zone in which it came in.
#include <set>

#include "scene/picture/picture.hpp"
#include "scene/picture/pupil_paint.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("the zones are the middle and the four sides, as one looks through the telescope") {
    CHECK(pupil_place({0, 0}) == PupilPlace::middle);
    CHECK(pupil_place({0.3F, -0.3F}) == PupilPlace::middle);
    CHECK(pupil_place({0, 0.9F}) == PupilPlace::top);
    CHECK(pupil_place({0.2F, -0.7F}) == PupilPlace::bottom);
    CHECK(pupil_place({0.9F, 0.1F}) == PupilPlace::right);  // +x: the observer's right
    CHECK(pupil_place({-0.6F, 0.5F}) == PupilPlace::left);
}

TEST_CASE("a ray keeps the place where it meets the objective, all the way") {
    const Setup setup = clipping_setup();
    const Report report = report_of(setup);
    const Frame frame = build_frame(setup, report);
    const double radius = report.train.objective_radius;
    std::set<PupilPlace> seen;
    int at_objective = 0;
    for (const LightRibbon& ribbon : frame.light) {
        CHECK(glm::length(ribbon.pupil) <= 1.0F);
        if (std::abs(ribbon.to.z) > 2e-3 || ribbon.from.z > -1) continue;  // ends on the objective
        CHECK(near(ribbon.to.x, radius * ribbon.pupil.x, 2e-3));
        CHECK(near(ribbon.to.y, radius * ribbon.pupil.y, 2e-3));
        seen.insert(pupil_place(ribbon.pupil));
        ++at_objective;
    }
    CHECK(at_objective
          == PictureEffort{}.axis_rays + PictureEffort{}.rim_rays
                 + PictureEffort{}.edge_points * PictureEffort{}.edge_rays);
    CHECK(seen.size() == 5);
}

TEST_CASE("what an opening takes is told by zone: a stop before the focus takes the rim's light") {
    Setup setup = clipping_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    int lost = 0;
    for (const LightRibbon& ribbon : frame.light) {
        if (!ribbon.clipped || ribbon.strength < 0.45F) continue;  // from the middle of the field
        CHECK(pupil_place(ribbon.pupil) != PupilPlace::middle);
        ++lost;
    }
    CHECK(lost > 0);
}
