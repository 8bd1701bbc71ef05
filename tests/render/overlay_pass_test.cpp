#include "studio.hpp"

using namespace beamfork;

TEST_CASE("a cross marks the pixel where a ray dies, in the clipping colour") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.marks = {{{0, 13, -31}, ColourRole::clipped, 15, MarkShape::cross, false, true}};
    check_colour(seen_at(studio.draw(frame, camera), camera, {0, 13, -31}), linear_rgb(0xD55E00));
}

TEST_CASE("a line is as wide as it says") {
    Studio studio;
    const Camera camera = side_camera();
    const PictureSize fine{.width = 320, .height = 240, .samples = 1, .bloom = false};
    for (const float width : {1.0F, 2.5F, 6.0F}) {
        Frame frame;
        frame.lines = {{{0, 3, -60}, {0, 3, 60}, ColourRole::undivided_beam, width, false, true}};
        const Image with = studio.draw(frame, camera, {}, fine);
        const Image without = studio.draw(Frame{}, camera, {}, fine);
        const double full = encoded(role_rgb(ColourRole::undivided_beam).g);
        double covered = 0;  // share of the way from ground to the line, summed over a column
        for (int y = 0; y < with.height; ++y) {
            const double ground = without.at(160, y)[1];
            covered += (with.at(160, y)[1] - ground) / (full - ground);
        }
        CHECK(near(covered, width, 0.15));  // a box profile of one pixel sampled at pixel centres
    }
}

TEST_CASE("lines hide behind bodies unless they lie on top") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.meshes = {box({-2, -40, -40}, {2, 40, 40}, Finish::metal)};
    frame.lines = {{{20, 10, -30}, {20, 10, 30}, ColourRole::clipped, 3, false, false},
                   {{20, -10, -30}, {20, -10, 30}, ColourRole::clipped, 3, false, true}};
    const Image image = studio.draw(frame, camera);
    check_colour(seen_at(image, camera, {20, -10, 0}), role_rgb(ColourRole::clipped));
    CHECK(seen_at(image, camera, {20, 10, 0})[0] < 200);
}

TEST_CASE("a dashed line has gaps") {
    Studio studio;
    Frame frame;
    frame.lines = {{{0, 0, -90}, {0, 0, 90}, ColourRole::undivided_beam, 3, true, true}};
    const Image image = studio.draw(frame, side_camera());
    int bright = 0;
    int dark = 0;
    for (int x = 40; x < 280; ++x) {
        bright += image.at(x, 120)[1] > 220 ? 1 : 0;
        dark += image.at(x, 120)[1] < 60 ? 1 : 0;
    }
    CHECK(bright > 60);
    CHECK(dark > 40);
}
