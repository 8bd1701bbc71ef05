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
    behind.light = {{{20, 0, -20}, {20, 10, 20}}};
    Frame before = mirror_alone;
    before.light = {{{-20, 0, -20}, {-20, 10, 20}}};
    const Image empty = studio.draw(mirror_alone, camera);
    CHECK(compare(empty, studio.draw(behind, camera))->greatest == 0);
    CHECK(compare(empty, studio.draw(before, camera))->greatest > 20);
}

TEST_CASE("a ray that begins behind the viewer is seen where it comes into sight") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.light = {{{-900, 2, -300}, {0, 40, 60}}};
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
    alive.marks = {{{0, 0, 60}, ColourRole::good, 9, MarkShape::diamond, true, false}};
    Frame all = alive;
    all.light.push_back({{0, 50, -90}, {0, 40, 60}, ColourRole::clipped, 1, true});
    all.marks.push_back({{0, 40, 60}, ColourRole::clipped, 9, MarkShape::cross, false, true});
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
        ribbon.role = ColourRole::left_arm;
    const Pixel ground = seen_at(studio.draw(Frame{}, camera, print), camera, {0, 0, 20});
    const Pixel beam = seen_at(studio.draw(frame, camera, print), camera, {0, 0, 20});
    CHECK(brightness(ground) > 3 * 220);
    CHECK(brightness(beam) < brightness(ground) - 100);
    CHECK(beam[2] > beam[0] + 40);  // blue stays
    for (LightRibbon& ribbon : frame.light)
        ribbon.role = ColourRole::undivided_beam;
    CHECK(brightness(seen_at(studio.draw(frame, camera, print), camera, {0, 0, 55})) > 3 * 60);
}

namespace {

// Along z from -80 to 80 mm through air: the path is 100 mm at its middle.
Frame frame_of_one_ray(float index) {
    Frame frame;
    LightRibbon ribbon{{0, 0, -80}, {0, 0, 80}, ColourRole::left_arm};
    ribbon.from_path_mm = 100 - 80 * index;
    ribbon.to_path_mm = 100 + 80 * index;
    ribbon.pupil = {0, 0.9F};
    frame.light = {ribbon};
    return frame;
}

// Where along the ray it is brightest, mm.
float brightest(const Image& image, const Camera& camera) {
    int most = -1;
    float place = 0;
    for (float z = -78; z <= 78; z += 1) {
        const int here = brightness(seen_at(image, camera, {0, 0, z}));
        if (here > most) place = z;
        most = std::max(most, here);
    }
    return place;
}

}  // namespace

TEST_CASE("a packet stands where the light has gone as far as the packets have, and runs on slower "
          "in glass") {
    Studio studio;
    const Camera camera = side_camera();
    ViewOptions moving;
    moving.light_moves = true;
    constexpr float pixel_mm = 1.0F;  // 0.67 mm, and the step of the search
    for (const float index : {1.0F, 1.5F}) {
        for (const float further : {-40.0F, 0.0F, 45.0F}) {
            moving.light_front_mm = 100 + further;
            const Image image = studio.draw(frame_of_one_ray(index), camera, moving);
            CHECK(near(brightest(image, camera), further / index, 2 * pixel_mm));
        }
    }
    // The beam along which it runs is dimmer than a steady one, and still seen.
    moving.light_front_mm = 140;
    const Image image = studio.draw(frame_of_one_ray(1), camera, moving);
    const Image steady = studio.draw(frame_of_one_ray(1), camera);
    const Image dark = studio.draw(Frame{}, camera);
    const glm::vec3 far_ahead{0, 0, 70};
    CHECK(brightness(seen_at(image, camera, far_ahead))
          < brightness(seen_at(steady, camera, far_ahead)));
    CHECK(brightness(seen_at(image, camera, far_ahead))
          > brightness(seen_at(dark, camera, far_ahead)));
}

TEST_CASE("a packet is where it is though its ray runs towards the viewer from far away") {
    Studio studio;
    Camera camera = side_camera();
    camera.yaw_rad = 1.3F;  // almost along the ray: the screen's middle is not the ray's
    ViewOptions moving;
    moving.light_moves = true;
    moving.light_front_mm = 100 + 30;
    const Image image = studio.draw(frame_of_one_ray(1), camera, moving);
    CHECK(near(brightest(image, camera), 30, 3));  // a pixel is up to 3 mm of the ray
}

TEST_CASE("painted, a ray bears its zone's colour; switching it needs no new upload") {
    Studio studio;
    const Camera camera = side_camera();
    const Image plain = studio.draw(frame_of_one_ray(1), camera);
    ViewOptions painted;
    painted.paint_pupil = true;
    REQUIRE(studio.renderer->draw(camera, painted, small).has_value());  // nothing sent since
    const Pixel top = seen_at(studio.renderer->read_pixels(), camera, {0, 0, 20});
    const Pixel before = seen_at(plain, camera, {0, 0, 20});
    CHECK(before[2] > before[0]);  // its own blue ...
    CHECK(top[0] > top[2]);        // ... and the warm colour of the top
    REQUIRE(studio.renderer->draw(camera, ViewOptions{}, small).has_value());
    CHECK(compare(plain, studio.renderer->read_pixels())->greatest == 0);
}
