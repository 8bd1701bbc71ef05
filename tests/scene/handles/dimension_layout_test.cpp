#include <algorithm>
#include <random>

#include "scene/handles/dimension_layout.hpp"
#include "scene/picture/label_layout.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr Viewport drawing{1100, 700};
constexpr float step_px = 4;

glm::vec2 number_size(const std::string& text) {
    return {8.0F * static_cast<float>(text.size()) + 8, 18};
}

bool boxes_meet(const PixelBox& a, const PixelBox& b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

// Looks from the side at the world's origin; square to the line of sight one mm is so many pixels.
Camera drawing_camera() {
    Camera camera;
    camera.distance_mm = 600;
    return camera;
}

Dimension length_along_light(double length) {
    Dimension one;
    one.from = {0, 0, -length / 2};
    one.to = {0, 0, length / 2};
    one.clear = 20;
    one.text = "a length";
    return one;
}

std::vector<PlacedDimension> placed_alone(const Dimension& one, LightCover& cover) {
    return lay_out_dimensions(std::span(&one, 1), drawing_camera(), drawing, number_size, cover,
                              step_px);
}

}  // namespace

TEST_CASE("a long dimension carries its number on the line, arrows pointing outward") {
    LightCover cover;
    const auto placed = placed_alone(length_along_light(120), cover);
    REQUIRE(placed.size() == 1);
    const PlacedDimension& one = placed[0];
    REQUIRE(one.arrows.size() == 2);
    // Seen square, the tips are as far apart as the length is at that depth.
    const double px = 120 / mm_per_pixel(drawing_camera(), drawing);
    CHECK(near(glm::distance(one.arrows[0].tip, one.arrows[1].tip), px, 0.1));  // single precision
    CHECK(glm::dot(one.arrows[0].towards, one.arrows[1].tip - one.arrows[0].tip) < 0);
    const glm::vec2 middle = (one.number.low + one.number.high) / 2.0F;
    CHECK(glm::distance(middle, (one.arrows[0].tip + one.arrows[1].tip) / 2.0F) < 0.01F);
    CHECK(one.extensions.size() == 2);
    for (const auto& [from, to] : one.lines)
        CHECK_FALSE(crosses(glm::mix(from, to, 0.01F), glm::mix(from, to, 0.99F), one.number));
    CHECK(std::any_of(cover.taken.begin(), cover.taken.end(),
                      [&](const PixelBox& box) { return box.low == one.number.low; }));
}

TEST_CASE("a short dimension has its arrows point inward from outside and its number beside them") {
    LightCover cover;
    const auto placed = placed_alone(length_along_light(3), cover);
    REQUIRE(placed.size() == 1);
    const PlacedDimension& one = placed[0];
    CHECK(glm::dot(one.arrows[0].towards, one.arrows[1].tip - one.arrows[0].tip) > 0);
    CHECK_FALSE(crosses(one.arrows[0].tip, one.arrows[1].tip, one.number));
}

TEST_CASE("a dimension that points at the viewer is left out") {
    LightCover cover;
    Dimension one = length_along_light(100);
    one.from = {0, 0, 0};
    one.to = {100, 0, 0};
    one.clear = 0;
    CHECK(placed_alone(one, cover).empty());
}

TEST_CASE("the dimension stands on the free side") {
    for (const double side : {1.0, -1.0}) {
        LightCover cover;
        Dimension one = length_along_light(100);
        one.free_side = {0, side, 0};
        const auto placed = placed_alone(one, cover);
        REQUIRE(placed.size() == 1);
        const float middle = drawing.height / 2;
        CHECK((placed[0].number.low.y < middle)
              == (side > 0));  // y up in the world, down in pixels
    }
}

TEST_CASE("numbers never overlap each other, what is taken, or the names laid out after them") {
    std::mt19937 random(17);
    std::uniform_real_distribution<float> turn(-3, 3);
    const Setup setup = cured_setup();
    const Report report = report_of(setup, 64);
    const Frame frame = build_frame(setup, report, PictureEffort{4, 4, 0, 4, 8, 12});
    std::size_t shown = 0;
    for (int i = 0; i < 60; ++i) {
        Camera camera = standard_view(StandardView::rear, frame, drawing.aspect());
        camera.yaw_rad += turn(random);
        camera.pitch_rad = turn(random) / 3;
        LightCover cover = light_cover(frame, camera, drawing);
        const PixelBox knob{{500, 300}, {560, 340}};
        cover.taken.push_back(knob);
        const auto dimensions = part_dimensions(setup, report, static_cast<std::size_t>(i) % 6);
        const auto placed =
            lay_out_dimensions(dimensions, camera, drawing, number_size, cover, step_px);
        shown += placed.size();
        const auto names = lay_out_labels(
            frame.labels, camera, drawing,
            [](const Label& label) { return number_size(label.text); }, cover);
        for (std::size_t a = 0; a < placed.size(); ++a) {
            CHECK_FALSE(boxes_meet(placed[a].number, knob));
            for (std::size_t b = 0; b < placed.size(); ++b) {
                if (a == b) continue;
                CHECK_FALSE(boxes_meet(placed[a].number, placed[b].number));
                for (const auto& [from, to] : placed[b].lines)
                    CHECK_FALSE(crosses(from, to, placed[a].number));
            }
            for (const PlacedLabel& name : names) {
                CHECK_FALSE(boxes_meet(placed[a].number, {name.low, name.high}));
                for (const auto& [from, to] : placed[a].lines)
                    CHECK_FALSE(crosses(from, to, {name.low, name.high}));
            }
        }
    }
    CHECK(shown > 60);  // most find a place
}
