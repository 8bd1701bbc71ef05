#include <algorithm>

#include "scene/picture/picture_input.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("each field stop carries its computed light, true to scale, in the hue of its arm") {
    const Setup setup = clipping_setup();
    const Report report = report_of(setup);
    const Frame frame = build_frame(setup, report);
    REQUIRE(frame.discs.size() == 2);
    for (std::size_t side = 0; side < 2; ++side) {
        const ImageDisc& disc = frame.discs[side];
        const EyeClipping& clipping = report.clipping[side];
        CHECK(near(glm::length(disc.right), clipping.field_stop.value / 2, 1e-4));  // floats
        CHECK(near(glm::length(disc.up), clipping.field_stop.value / 2, 1e-4));
        CHECK(near(glm::dot(disc.right, disc.up), 0, 1e-3));
        REQUIRE(disc.light.size()
                == static_cast<std::size_t>(disc.size) * static_cast<std::size_t>(disc.size));
        CHECK(disc.role == (side == 0 ? ColourRole::left_arm : ColourRole::right_arm));
        const auto level = [&](int row, int column) {
            return disc.light[static_cast<std::size_t>(row) * disc.size + column];
        };
        const int middle = disc.size / 2;
        // Half a pixel from the middle the light is that of the first ring's span at most.
        CHECK(near(level(middle, middle), clipping.points.front().relative, 0.02));
        CHECK(level(middle, 0) < level(middle, middle));  // this setup darkens towards the edge
        for (const float light : disc.light) {
            CHECK(light >= 0);
            CHECK(light <= 1);
        }
    }
}

TEST_CASE("row 0 of a field stop's picture is at -y, column 0 at -x of the stop") {
    const Setup setup = clipping_setup();
    Report report = report_of(setup);
    // Light on the upper right half only: azimuths of a ring from 0 to 180 degrees are lit.
    for (LitPoint& point : report.clipping[0].points)
        point.relative = point.at.y > 0.01 ? 1 : 0;
    const PictureEffort effort;
    Frame frame;
    add_field_stops(frame, {setup, report, effort});
    const ImageDisc& disc = frame.discs[0];
    const auto brightness = [&](int row, int column) {
        return disc.light[static_cast<std::size_t>(row) * disc.size + column];
    };
    CHECK(brightness(disc.size - 10, disc.size / 2) > 0.5F);
    CHECK(brightness(10, disc.size / 2) == 0);
    const glm::vec3 up(report.train.path(Eye::left).world_from_field_stop.y());
    CHECK(glm::dot(disc.up, up) > 0);
}

TEST_CASE("openings that take light are outlined in the clipping colour and the worst is named") {
    const Setup setup = clipping_setup();
    const Report report = report_of(setup);
    const PictureEffort effort;
    Frame frame;
    add_openings(frame, {setup, report, effort});
    REQUIRE_FALSE(frame.labels.empty());
    const auto at_once = std::count_if(frame.labels.begin(), frame.labels.end(),
                                       [](const Label& label) { return !label.on_hover; });
    CHECK(at_once <= 3);
    const EndShare worst = report.clipping[0].rings.front().ends.front();  // already on axis
    const std::string name = end_name(setup, report.train.path(Eye::left), worst);
    const Label& first = frame.labels[0];
    const std::string part = setup.parts[static_cast<std::size_t>(first.part)].name;
    CHECK((part + ": " + first.text).find(name) == 0);
    CHECK(first.role == LabelRole::clipped);
    const bool marked = std::any_of(frame.lines.begin(), frame.lines.end(), [](const Line& line) {
        return line.role == ColourRole::clipped && line.width_px > 2;
    });
    CHECK(marked);
}

TEST_CASE("without clipping no opening has the clipping colour") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    const PictureEffort effort;
    Frame frame;
    add_openings(frame, {setup, report, effort});
    CHECK(frame.labels.empty());
    REQUIRE_FALSE(frame.lines.empty());
    for (const Line& line : frame.lines)
        CHECK(line.role != ColourRole::clipped);
}
