#include "studio.hpp"

using namespace beamfork;

TEST_CASE("a field stop's image is seen where it stands, in its own colour, and right way up") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    const Rgb sky_blue = linear_rgb(0x56B4E9);
    const Rgb yellow = linear_rgb(0xF0E442);
    frame.discs = {disc_towards_side({0, 40, -30}, 12, ColourRole::left_arm),
                   disc_towards_side({0, -30, 20}, 8, ColourRole::right_arm)};
    // The upper half of the second one gets half the light.
    std::fill(frame.discs[1].light.begin() + 32, frame.discs[1].light.end(), 0.5F);
    const Image image = studio.draw(frame, camera);
    check_colour(seen_at(image, camera, {0, 40, -30}), sky_blue);
    check_colour(seen_at(image, camera, {0, -34, 20}), yellow);
    check_colour(seen_at(image, camera, {0, -26, 20}), 0.5F * yellow);
}

TEST_CASE("a field stop's image is seen from both sides") {
    Studio studio;
    Camera camera = side_camera();
    camera.yaw_rad = glm::pi<float>();
    Frame frame;
    frame.discs = {disc_towards_side({0, 0, 0}, 12, ColourRole::shortfall, 0.5F)};
    check_colour(seen_at(studio.draw(frame, camera), camera, {0, 0, 0}),
                 0.5F * role_rgb(ColourRole::shortfall));
}

TEST_CASE("an opened tube shows what it holds, a whole one hides it") {
    Studio studio;
    const Camera camera = side_camera();
    const Rgb inside = role_rgb(ColourRole::good);  // a green
    Frame frame;
    frame.meshes = {tube(25, 22)};
    frame.discs = {disc_towards_side({0, 0, 0}, 10, ColourRole::good)};
    const auto middle = [&](ShellView shells, const Camera& from) {
        ViewOptions options;
        options.shells = shells;
        return seen_at(studio.draw(frame, from, options), from, {0, 0, 0});
    };
    check_colour(middle(ShellView::open, camera), inside);
    check_colour(middle(ShellView::hidden, camera), inside);
    CHECK(middle(ShellView::whole, camera)[0]
          > middle(ShellView::whole, camera)[1] / 2);  // grey metal, not green

    SUBCASE("cut by a plane it is open from one side only") {
        Camera other_side = camera;
        other_side.yaw_rad = glm::pi<float>();
        check_colour(middle(ShellView::section, camera), inside);
        CHECK(middle(ShellView::section, other_side)[0]
              > middle(ShellView::section, other_side)[1] / 2);
    }
    SUBCASE("it opens towards the viewer wherever the viewer stands") {
        for (const float yaw : {-0.8F, 0.5F, 0.9F, 2.6F}) {
            for (const float pitch : {-0.6F, 0.2F, 0.8F}) {
                Camera camera_there = camera;
                camera_there.yaw_rad = yaw;
                camera_there.pitch_rad = pitch;
                check_colour(middle(ShellView::open, camera_there), inside);
            }
        }
    }
}

TEST_CASE("the part under the pointer stands out, others do not") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.meshes = {box({-5, -20, -40}, {5, 20, -5}, Finish::metal),
                    box({-5, -20, 5}, {5, 20, 40}, Finish::metal)};
    frame.meshes[0].part = 0;
    frame.meshes[1].part = 1;
    const Image plain = studio.draw(frame, camera);
    REQUIRE(studio.renderer->draw(camera, {}, small, 1).has_value());
    const Image pointed = studio.renderer->read_pixels();
    CHECK(seen_at(pointed, camera, {0, 0, -20}) == seen_at(plain, camera, {0, 0, -20}));
    CHECK(brightness(seen_at(pointed, camera, {0, 0, 20}))
          > brightness(seen_at(plain, camera, {0, 0, 20})) + 10);
}
