// What fades shows what is behind it, what is held back is not there.
#include "studio.hpp"

using namespace beamfork;

namespace {

// A plate between the viewer and a bright line, as part 0; the line is part 1's.
Frame plate_before_line() {
    Frame frame;
    frame.meshes = {box({-4, -40, -40}, {-2, 40, 40}, Finish::metal)};
    frame.meshes[0].part = 0;
    frame.lines = {{{20, 0, -60}, {20, 0, 60}, ColourRole::good, 5, false, false, 1}};
    return frame;
}

Image drawn_with(Studio& studio, Frame frame, const Emphasis& emphasis, int samples = 4) {
    frame.revision = ++studio.revision;
    studio.renderer->upload(frame);
    PictureSize size = small;
    size.samples = samples;
    REQUIRE(studio.renderer->draw(side_camera(), {}, size, -1, emphasis).has_value());
    return studio.renderer->read_pixels();
}

}  // namespace

TEST_CASE("a body that has faded no longer hides what is behind it, one that is lit does") {
    Studio studio;
    const Frame frame = plate_before_line();
    const auto green_in_middle = [&](const Emphasis& emphasis) {
        const Image image = drawn_with(studio, frame, emphasis);
        const Pixel pixel = seen_at(image, side_camera(), {20, 0, 0});
        return pixel[1] - pixel[0];
    };
    CHECK(green_in_middle({}) < 20);
    CHECK(green_in_middle({{0, 1}}) < 20);
    CHECK(green_in_middle({{1, 0}}) > 150);  // of 158, the green of ColourRole::good
    // The line's own part fades with it.
    CHECK(green_in_middle({{1, 1}}) < 120);
    CHECK(green_in_middle({{1, 1}}) > 10);
}

TEST_CASE("half way a body covers half of its pixels' light, with and without samples") {
    Studio studio;
    Frame frame;
    frame.meshes = {box({-4, -40, -40}, {-2, 40, 40}, Finish::metal)};
    frame.meshes[0].part = 0;
    for (const int samples : {1, 4}) {
        CAPTURE(samples);
        const auto mean = [&](float fade) {
            const Image image = drawn_with(studio, frame, {{fade}}, samples);
            double sum = 0;
            for (int y = 100; y < 140; ++y)
                for (int x = 140; x < 180; ++x)
                    sum += brightness(image.at(x, y));
            return sum / 1600;
        };
        const double whole = mean(0);
        const double gone = mean(1);
        REQUIRE(std::abs(whole - gone) > 60);
        // 0.08: the noise of 1600 pixels, and the ghost's own light. Which samples an alpha covers is the driver's to
        // round: half a sample of four more or less (OpenGL 3.3 core, 4.1.3: any function that is nearly linear).
        CHECK(near((mean(0.5F) - gone) / (whole - gone), 0.5, samples == 1 ? 0.08 : 0.08 + 0.125));
    }
}

TEST_CASE("results that are held back leave no light, no mark and no line of theirs") {
    Studio studio;
    Frame frame;
    add_fan(frame, 60);
    frame.marks = {{{0, 13, -31}, ColourRole::clipped, 15, MarkShape::cross, true, true}};
    frame.lines = {{{0, -30, -60}, {0, -30, 60}, ColourRole::good, 3, false, true, -1, true}};
    frame.discs = {disc_towards_side({0, 40, 40}, 10, ColourRole::undivided_beam)};
    const Image held_back = drawn_with(studio, frame, {{}, 0});
    frame.light.clear();
    frame.marks.clear();
    frame.lines.clear();
    frame.discs[0].light.assign(64, 0);
    const Image empty = drawn_with(studio, frame, {});
    const auto difference = compare(held_back, empty);
    REQUIRE(difference.has_value());
    CHECK(difference->greatest <= 1);  // dither
}
