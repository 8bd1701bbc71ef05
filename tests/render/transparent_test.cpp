// Pictures without a ground, against the laws of laying pictures over each other (T. Porter, T. Duff, "Compositing
// digital images", SIGGRAPH 1984).
#include "studio.hpp"

using namespace beamfork;

namespace {

constexpr PictureSize clear_size{.width = 320, .height = 240, .transparent = true};

double linear(double step) { return linear_from_srgb(step / 255); }

/// What a viewer sees of one colour over a plain ground, as PNG's alpha means it (PNG, 2nd ed., 13.16).
double seen_over(const Pixel& pixel, std::size_t channel, double ground) {
    const double alpha = pixel[3];
    return (alpha * pixel[channel] + (255 - alpha) * ground) / 255;
}

Frame fan_and_box() {
    Frame frame = prisms_in_light();
    frame.meshes.push_back(box({-60, -60, -80}, {-40, 60, -65}, Finish::metal));
    return frame;
}

}  // namespace

TEST_CASE("where nothing is, nothing covers the ground") {
    Studio studio;
    const Image image = studio.draw(Frame{}, side_camera(), {}, clear_size);
    CHECK(std::all_of(image.rgba.begin(), image.rgba.end(), [](int step) { return step == 0; }));
}

TEST_CASE("an opaque body covers wholly and has the colour it has on a ground") {
    Studio studio;
    const Camera camera = side_camera();
    const glm::vec3 inside{-60, 45, -72};
    const Pixel clear =
        seen_at(straight(studio.draw(fan_and_box(), camera, {}, clear_size)), camera, inside);
    const Pixel grounded = seen_at(studio.draw(fan_and_box(), camera), camera, inside);
    CHECK(clear[3] == 255);
    for (std::size_t i = 0; i < 3; ++i)
        CHECK(near(clear[i], grounded[i], 2));  // dither and rounding
}

// On a ground g, light t is screened: g + (1 - g) t. Two pictures with the ground, one of them without light, give t;
// over black, where g = 0, it must come out again.
TEST_CASE("over black, light is as bright as it was computed") {
    Studio studio;
    const Camera camera = side_camera();
    const Image clear = straight(studio.draw(prisms_in_light(), camera, {}, clear_size));
    const Image lit = studio.draw(prisms_in_light(), camera);
    const Image ground = studio.draw(Frame{}, camera);
    for (const glm::vec3 place : {glm::vec3{0, 10, -50}, {0, 0, 0}, {0, 5, 40}, {0, 0, 58}}) {
        const Pixel c = seen_at(clear, camera, place);
        const Pixel n = seen_at(lit, camera, place);
        const Pixel g = seen_at(ground, camera, place);
        CHECK(c[3] > 0);
        for (std::size_t i = 0; i < 3; ++i) {
            const double light = (linear(n[i]) - linear(g[i])) / (1 - linear(g[i]));
            // A step of dark grounds is up to five steps of light there, since the curve is steep near black.
            const double within = light < 0.02 ? 10 : 4;
            CHECK(near(seen_over(c, i, 0), encoded(std::max(light, 0.0)), within));
        }
    }
}

// On light ground, light k multiplies as ink does: g k. Over white, where g = 1, k must come out.
TEST_CASE("over white, ink is as dark as it was computed") {
    Studio studio;
    const Camera camera = side_camera();
    ViewOptions paper;
    paper.light_ground = true;
    const Image clear = straight(studio.draw(prisms_in_light(), camera, paper, clear_size));
    const Image inked = studio.draw(prisms_in_light(), camera, paper);
    const Image ground = studio.draw(Frame{}, camera, paper);
    for (const glm::vec3 place : {glm::vec3{0, 10, -50}, {0, 0, 0}, {0, 5, 40}, {0, 0, 58}}) {
        const Pixel c = seen_at(clear, camera, place);
        const Pixel n = seen_at(inked, camera, place);
        const Pixel g = seen_at(ground, camera, place);
        for (std::size_t i = 0; i < 3; ++i) {
            const double left = linear(n[i]) / linear(g[i]);
            CHECK(near(seen_over(c, i, 255), encoded(std::min(left, 1.0)), 4));  // as above
        }
    }
}

TEST_CASE("laid over black or white, light never leaves the range from the ground to white") {
    Studio studio;
    const Image clear = straight(studio.draw(fan_and_box(), side_camera(), {}, clear_size));
    int partly = 0;
    for (std::size_t i = 0; i < clear.rgba.size(); i += 4)
        partly += clear.rgba[i + 3] > 0 && clear.rgba[i + 3] < 255 ? 1 : 0;
    CHECK(partly > 1000);  // light and the edges of bodies are neither there nor absent
}

TEST_CASE(
    "over: nothing changes nothing, an opaque top hides, alpha adds up as light let through") {
    const Image half{.width = 1, .height = 1, .rgba = {100, 50, 0, 128}};
    const Image none{.width = 1, .height = 1, .rgba = {0, 0, 0, 0}};
    const Image full{.width = 1, .height = 1, .rgba = {10, 20, 30, 255}};
    CHECK(over(none, half) == half);
    CHECK(over(half, none) == half);
    CHECK(over(full, half) == full);
    const Pixel both = over(half, half).at(0, 0);
    CHECK(near(255 - both[3], 127.0 * 127.0 / 255.0, 0.51));  // what both let through
    CHECK(near(both[0], 100 + 100 * 127.0 / 255.0, 0.51));
    const Pixel plain = straight(half).at(0, 0);
    CHECK(near(plain[0], 100 * 255 / 128.0, 0.51));
    CHECK(plain[3] == 128);
}
