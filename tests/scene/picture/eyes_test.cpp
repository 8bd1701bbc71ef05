// Light through the eyepieces into the eyes, against the ideal lens of the textbook: light from its focal plane leaves it
// parallel, and what met the field stop with slope u crosses the other focal plane at f u (E. Hecht, "Optics", 5th ed.,
// section 5.2.3).
#include "parts/observer.hpp"
#include "scene/picture/eye_place.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

struct InEye {
    std::vector<LightRibbon> from_lens;  // between eyepiece and eye
    std::vector<LightRibbon> inside;     // behind the eye's pupil
    Pose pupil;
    double behind_lens = 0;
};

InEye light_in_left_eye(const Setup& setup, const Report& report) {
    const auto& eyepiece = part_as<EyepiecePair>(setup, report.train.choice.eyepiece);
    const EyeBehindEyepiece place = eye_place(eyepiece);
    InEye found;
    found.pupil =
        report.train.path(Eye::left).world_from_field_stop * translation(0, 0, place.pupil);
    found.behind_lens = place.eye_lens - place.pupil;
    PictureEffort effort;
    effort.edge_points = 0;  // light along the axis alone
    for (const LightRibbon& ribbon : build_frame(setup, report, effort).light) {
        if (ribbon.role != ColourRole::left_arm) continue;
        const double from = found.pupil.point_in(Point(ribbon.from)).z;
        if (near(from, 0, 1e-3)) found.inside.push_back(ribbon);
        if (near(from, found.behind_lens, 1e-3)) found.from_lens.push_back(ribbon);
    }
    return found;
}

glm::dvec2 across_pupil(const Pose& pupil, const glm::vec3& at) {
    return glm::dvec2(pupil.point_in(Point(at)));
}

}  // namespace

TEST_CASE("in focus, light along the axis fills the exit pupil and goes into the eye parallel") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    const InEye light = light_in_left_eye(setup, report);
    REQUIRE(light.inside.size() > 10);
    const double exit_pupil = report.magnification.exit_pupil.value;
    double widest = 0;
    for (const LightRibbon& ribbon : light.inside) {
        const glm::dvec2 from = across_pupil(light.pupil, ribbon.from);
        const glm::dvec2 to = across_pupil(light.pupil, ribbon.to);
        widest = std::max(widest, glm::length(from));
        // The traced rays miss the stop's middle by the glass path's aberration: some hundredths of a mm.
        CHECK(near(glm::distance(from, to), 0, 0.1));
        CHECK(ribbon.to_share == 0);  // it goes out, it does not end
    }
    // Aperture over magnification is the exit pupil; marginal rays of a sine-condition objective lie within 2 %.
    CHECK(near(2 * widest, exit_pupil, 0.03 * exit_pupil));
}

TEST_CASE("what falls beside the eye's pupil goes no farther") {
    Setup setup = cured_setup();
    setup.parts[7].body.get<Observer>().eye_pupil = {1};
    const Report report = report_of(setup);
    REQUIRE(report.magnification.exit_pupil.value > 1.1);
    const InEye light = light_in_left_eye(setup, report);
    CHECK(light.inside.size() < light.from_lens.size());
    REQUIRE_FALSE(light.inside.empty());
    for (const LightRibbon& ribbon : light.inside)
        CHECK(glm::length(across_pupil(light.pupil, ribbon.from)) < 0.5 + 1e-3);
}

TEST_CASE("the iris is open as wide as the observer's pupil") {
    for (const double pupil : {2.0, 6.0}) {
        Setup setup = cured_setup();
        setup.parts[7].body.get<Observer>().eye_pupil = {pupil};
        const Report report = report_of(setup);
        const InEye light = light_in_left_eye(setup, report);
        const Frame frame = build_frame(setup, report);
        std::size_t on_the_edge = 0;
        for (const Line& line : frame.lines) {
            const Point at = light.pupil.point_in(Point(line.from));
            if (std::abs(at.z) > 1e-3) continue;
            if (near(glm::length(glm::dvec2(at)), pupil / 2, 1e-3)) ++on_the_edge;
        }
        CHECK(on_the_edge >= 36);
    }
}

TEST_CASE("light comes out of the dark and goes on without a step where two stretches meet") {
    for (const Setup& setup : {cured_setup(), clipping_setup()}) {
        const Frame frame = build_frame(setup, report_of(setup));
        std::size_t joints = 0;
        for (std::size_t i = 1; i < frame.light.size(); ++i) {
            const LightRibbon& before = frame.light[i - 1];
            const LightRibbon& behind = frame.light[i];
            if (before.to != behind.from || before.role != behind.role) continue;
            CHECK(
                near(before.to_share * before.strength, behind.from_share * behind.strength, 1e-6));
            ++joints;
        }
        CHECK(joints > 100);
        float first = 1e9F;
        for (const LightRibbon& ribbon : frame.light)
            first = std::min(first, ribbon.from.z);
        for (const LightRibbon& ribbon : frame.light)
            if (ribbon.from.z < first + 1) CHECK(ribbon.from_share == 0);
    }
}
