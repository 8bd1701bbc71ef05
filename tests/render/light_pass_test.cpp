#include "studio.hpp"

using namespace beamfork;

TEST_CASE("the order of glass and light does not matter") {
    Studio studio;
    Camera camera = side_camera();
    camera.yaw_rad = 0.5F;
    camera.pitch_rad = 0.4F;
    const Frame frame = prisms_in_light();
    Frame reversed = frame;
    std::reverse(reversed.meshes.begin(), reversed.meshes.end());
    std::reverse(reversed.light.begin(), reversed.light.end());
    const auto difference = compare(studio.draw(frame, camera), studio.draw(reversed, camera));
    REQUIRE(difference.has_value());
    CHECK(difference->greatest <= 1);  // sums of half-precision numbers round differently
}

TEST_CASE("glass only adds light") {
    Studio studio;
    const Camera camera = side_camera();
    const Frame with_glass = prisms_in_light();
    Frame without_glass = with_glass;
    without_glass.meshes.clear();
    const Image brighter = studio.draw(with_glass, camera);
    const Image darker = studio.draw(without_glass, camera);
    int least = 255;
    for (std::size_t i = 0; i < brighter.rgba.size(); ++i) {
        least = std::min(least, int{brighter.rgba[i]} - int{darker.rgba[i]});
    }
    CHECK(least >= -1);  // rounding
    CHECK(brightness(seen_at(brighter, camera, {-10, 0, 0}))
          > brightness(seen_at(darker, camera, {-10, 0, 0})));
}

TEST_CASE("twice as many rays give the same light") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    add_fan(frame, 400);
    Frame doubled = frame;
    doubled.light.insert(doubled.light.end(), frame.light.begin(), frame.light.end());
    doubled.ray_count = 2 * frame.ray_count;
    const auto difference = compare(studio.draw(frame, camera), studio.draw(doubled, camera));
    REQUIRE(difference.has_value());
    CHECK(difference->mean < 0.5);  // single rays differ where their level bends, the beam does not
    CHECK(difference->greatest <= 6);
}

TEST_CASE("half the share of the light is darker than the whole, and more gain is brighter") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    add_fan(frame, 100);
    Frame halved = frame;
    for (LightRibbon& ribbon : halved.light)
        ribbon.strength = 0.5F;
    const glm::vec3 place{0, 0, -20};
    const int full = brightness(seen_at(studio.draw(frame, camera), camera, place));
    CHECK(brightness(seen_at(studio.draw(halved, camera), camera, place)) < full);
    ViewOptions brighter;
    brighter.light_gain = 2;
    CHECK(brightness(seen_at(studio.draw(frame, camera, brighter), camera, place)) > full);
}

TEST_CASE("a ray behind a mirror does not show, one in front of it does") {
    Studio studio;
    const Camera camera = side_camera();
    Frame mirror_alone;
    mirror_alone.meshes = {box({0, -40, -40}, {2, 40, 40}, Finish::mirror)};
    Frame behind = mirror_alone;
    behind.light = {{{20, 0, -20}, {20, 10, 20}, Rgb{1}, 1}};
    Frame before = mirror_alone;
    before.light = {{{-20, 0, -20}, {-20, 10, 20}, Rgb{1}, 1}};
    const Image empty = studio.draw(mirror_alone, camera);
    CHECK(compare(empty, studio.draw(behind, camera))->greatest == 0);
    CHECK(compare(empty, studio.draw(before, camera))->greatest > 20);
}

TEST_CASE("a ray that begins behind the viewer is seen where it comes into sight") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.light = {{{-900, 2, -300}, {0, 40, 60}, Rgb{1}, 1}};
    const glm::vec3 in_sight = glm::mix(frame.light[0].from, frame.light[0].to, 750.0F / 900);
    const Image with = studio.draw(frame, camera);
    const Image without = studio.draw(Frame{}, camera);
    CHECK(brightness(seen_at(with, camera, in_sight))
          > brightness(seen_at(without, camera, in_sight)) + 30);
}

TEST_CASE("clipped rays and their marks can be hidden together") {
    Studio studio;
    const Camera camera = side_camera();
    Frame alive;
    add_fan(alive, 20);
    alive.marks = {{{0, 0, 60}, Rgb{0, 1, 0}, 9, MarkShape::diamond, true, false}};
    Frame all = alive;
    all.light.push_back({{0, 50, -90}, {0, 40, 60}, Rgb{1, 0.1F, 0}, 1, true});
    all.marks.push_back({{0, 40, 60}, Rgb{1, 0.1F, 0}, 9, MarkShape::cross, false, true});
    ViewOptions hiding;
    hiding.clipped_rays = false;
    const Image expected = studio.draw(alive, camera);
    CHECK(compare(expected, studio.draw(all, camera, hiding))->greatest == 0);
    CHECK(compare(expected, studio.draw(all, camera))->greatest > 20);
    ViewOptions dark;
    dark.light = false;
    CHECK(brightness(seen_at(studio.draw(alive, camera, dark), camera, {0, 0, 0}))
          < brightness(seen_at(expected, camera, {0, 0, 0})));
}

TEST_CASE("on light ground light darkens in its hue and never to black") {
    Studio studio;
    const Camera camera = side_camera();
    ViewOptions print;
    print.light_ground = true;
    Frame frame;
    add_fan(frame, 300);
    for (LightRibbon& ribbon : frame.light)
        ribbon.colour = linear_rgb(0x56B4E9);
    const Pixel ground = seen_at(studio.draw(Frame{}, camera, print), camera, {0, 0, 20});
    const Pixel beam = seen_at(studio.draw(frame, camera, print), camera, {0, 0, 20});
    CHECK(brightness(ground) > 3 * 220);
    CHECK(brightness(beam) < brightness(ground) - 100);
    CHECK(beam[2] > beam[0] + 40);  // blue stays
    for (LightRibbon& ribbon : frame.light)
        ribbon.colour = Rgb{1};
    CHECK(brightness(seen_at(studio.draw(frame, camera, print), camera, {0, 0, 55})) > 3 * 60);
}
