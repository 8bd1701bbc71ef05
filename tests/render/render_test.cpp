// What a picture must show whatever it looks like: places, hues, who hides whom, and that order and number of
// rays do not matter. Drawn without a display.
#include <algorithm>
#include <cmath>
#include <optional>

#include "render/offscreen.hpp"
#include "render/program.hpp"
#include "render/renderer.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <glm/gtc/constants.hpp>

using namespace beamfork;

namespace {

constexpr PictureSize small{.width = 320, .height = 240};
constexpr Viewport viewport{320, 240};

using Pixel = std::array<std::uint8_t, 4>;

/// A context and a renderer; complaints of the driver fail the test at its end.
struct Studio {
    Result<OffscreenContext> context = OffscreenContext::create();
    std::optional<Renderer> renderer;
    std::uint64_t revision = 0;

    Studio() {
        REQUIRE_MESSAGE(context.has_value(), (context ? "" : to_text(context.error())));
        auto made = Renderer::create();
        REQUIRE_MESSAGE(made.has_value(), (made ? "" : to_text(made.error())));
        renderer.emplace(*std::move(made));
    }
    Studio(const Studio&) = delete;
    Studio& operator=(const Studio&) = delete;
    ~Studio() {
        for (const std::string& complaint : renderer->take_errors())
            FAIL_CHECK(complaint);
    }

    Image draw(Frame frame,
               const Camera& camera,
               const ViewOptions& options = {},
               const PictureSize& size = small) {
        frame.revision = ++revision;
        renderer->upload(frame);
        const auto drawn = renderer->draw(camera, options, size);
        REQUIRE(drawn.has_value());
        CHECK(*drawn != 0);
        return renderer->read_pixels();
    }
};

/// Seen from the side: light from left to right, one pixel about 0.67 mm.
Camera side_camera() { return {.target = {0, 0, 0}, .distance_mm = 300}; }

Pixel seen_at(const Image& image, const Camera& camera, glm::vec3 world) {
    const auto pixel =
        project(camera, world, {static_cast<float>(image.width), static_cast<float>(image.height)});
    REQUIRE(pixel.has_value());
    return image.at(static_cast<int>(pixel->x), static_cast<int>(pixel->y));
}

int brightness(const Pixel& pixel) { return pixel[0] + pixel[1] + pixel[2]; }

/// IEC 61966-2-1:1999, the encoding curve of sRGB, in steps of 0..255.
double encoded(double linear) {
    return 255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055);
}

void check_colour(const Pixel& actual, const Rgb& linear) {
    // The shader's curve is within 0.003 of the standard (0.8 steps); rounding and dither add one.
    for (int i = 0; i < 3; ++i)
        CHECK(near(actual[static_cast<std::size_t>(i)], encoded(linear[i]), 2));
}

ImageDisc disc_towards_side(glm::vec3 centre, float radius, Rgb colour) {
    ImageDisc disc;
    disc.centre = centre;
    disc.right = {0, 0, radius};
    disc.up = {0, radius, 0};
    disc.size = 8;
    disc.pixels.assign(64, colour);
    return disc;
}

void add_quad(Mesh& mesh, const std::array<glm::vec3, 4>& corners) {
    const glm::vec3 normal =
        glm::normalize(glm::cross(corners[1] - corners[0], corners[2] - corners[0]));
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    for (const glm::vec3& corner : corners)
        mesh.vertices.push_back({corner, normal});
    mesh.indices.insert(mesh.indices.end(),
                        {first, first + 1, first + 2, first, first + 2, first + 3});
}

Mesh box(glm::vec3 low, glm::vec3 high, Finish finish) {
    Mesh mesh;
    mesh.finish = finish;
    mesh.tint = finish == Finish::glass ? Rgb{0.4F, 0.65F, 0.8F} : Rgb{0.6F};
    const auto at = [&](int x, int y, int z) {
        return glm::vec3(x != 0 ? high.x : low.x, y != 0 ? high.y : low.y, z != 0 ? high.z : low.z);
    };
    add_quad(mesh, {at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0)});
    add_quad(mesh, {at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)});
    add_quad(mesh, {at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)});
    add_quad(mesh, {at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0)});
    add_quad(mesh, {at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0)});
    add_quad(mesh, {at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)});
    return mesh;
}

/// A closed tube about z from -60 to 60 mm.
Mesh tube(float outer, float inner) {
    Mesh mesh;
    mesh.is_shell = true;
    mesh.tint = Rgb{0.2F, 0.25F, 0.3F};
    const auto wall = [&mesh](float r0, float z0, float r1, float z1) {
        constexpr std::uint32_t corners = 48;
        const glm::vec2 normal = glm::normalize(glm::vec2(z1 - z0, r0 - r1));
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        for (std::uint32_t i = 0; i < corners; ++i) {
            const float angle = glm::two_pi<float>() * static_cast<float>(i) / corners;
            const glm::vec3 out(std::cos(angle), std::sin(angle), 0);
            const glm::vec3 n = normal.x * out + glm::vec3(0, 0, normal.y);
            mesh.vertices.push_back({r0 * out + glm::vec3(0, 0, z0), n});
            mesh.vertices.push_back({r1 * out + glm::vec3(0, 0, z1), n});
            const std::uint32_t a = first + 2 * i;
            const std::uint32_t b = first + 2 * ((i + 1) % corners);
            mesh.indices.insert(mesh.indices.end(), {a, b, b + 1, a, b + 1, a + 1});
        }
    };
    wall(outer, -60, outer, 60);
    wall(outer, 60, inner, 60);
    wall(inner, 60, inner, -60);
    wall(inner, -60, outer, -60);
    return mesh;
}

/// Rays that converge from a round opening at z = -90 to a point at z = 60.
void add_fan(Frame& frame, int rays) {
    frame.ray_count = rays;
    for (int i = 0; i < rays; ++i) {
        const float radius =
            30 * std::sqrt((static_cast<float>(i) + 0.5F) / static_cast<float>(rays));
        const float angle = 2.4F * static_cast<float>(i);
        frame.light.push_back(
            {{radius * std::cos(angle), radius * std::sin(angle), -90}, {0, 0, 60}, Rgb{1}, 1});
    }
}

/// Two prisms of glass one behind the other in a fan of light.
Frame prisms_in_light() {
    Frame frame;
    frame.meshes = {box({-20, -20, -20}, {0, 20, 10}, Finish::glass),
                    box({2, -15, 0}, {20, 15, 30}, Finish::glass),
                    box({5, -25, -40}, {15, -5, 20}, Finish::glass)};
    add_fan(frame, 60);
    return frame;
}

}  // namespace

TEST_CASE("a field stop's image is seen where it stands, in its own colour, and right way up") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    const Rgb sky_blue = linear_rgb(0x56B4E9);
    const Rgb yellow = linear_rgb(0xF0E442);
    frame.discs = {disc_towards_side({0, 40, -30}, 12, sky_blue),
                   disc_towards_side({0, -30, 20}, 8, yellow)};
    // The upper half of the second one is dark.
    std::fill(frame.discs[1].pixels.begin() + 32, frame.discs[1].pixels.end(), Rgb{0.02F});
    const Image image = studio.draw(frame, camera);
    check_colour(seen_at(image, camera, {0, 40, -30}), sky_blue);
    check_colour(seen_at(image, camera, {0, -34, 20}), yellow);
    check_colour(seen_at(image, camera, {0, -26, 20}), Rgb{0.02F});
}

TEST_CASE("a field stop's image is seen from both sides") {
    Studio studio;
    Camera camera = side_camera();
    camera.yaw_rad = glm::pi<float>();
    Frame frame;
    frame.discs = {disc_towards_side({0, 0, 0}, 12, Rgb{0.3F, 0.1F, 0.6F})};
    check_colour(seen_at(studio.draw(frame, camera), camera, {0, 0, 0}), Rgb{0.3F, 0.1F, 0.6F});
}

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

TEST_CASE("a cross marks the pixel where a ray dies, in the clipping colour") {
    Studio studio;
    const Camera camera = side_camera();
    const Rgb vermillion = linear_rgb(0xD55E00);
    Frame frame;
    frame.marks = {{{0, 13, -31}, vermillion, 15, MarkShape::cross, false, true}};
    check_colour(seen_at(studio.draw(frame, camera), camera, {0, 13, -31}), vermillion);
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

TEST_CASE("a line is as wide as it says") {
    Studio studio;
    const Camera camera = side_camera();
    const PictureSize fine{.width = 320, .height = 240, .samples = 1, .glow = false};
    for (const float width : {1.0F, 2.5F, 6.0F}) {
        Frame frame;
        frame.lines = {{{0, 3, -60}, {0, 3, 60}, Rgb{1}, width, false, true}};
        const Image with = studio.draw(frame, camera, {}, fine);
        const Image without = studio.draw(Frame{}, camera, {}, fine);
        double covered = 0;  // share of the way from ground to white, summed over a column
        for (int y = 0; y < with.height; ++y) {
            const double ground = without.at(160, y)[1];
            covered += (with.at(160, y)[1] - ground) / (255 - ground);
        }
        CHECK(near(covered, width, 0.15));  // a box profile of one pixel sampled at pixel centres
    }
}

TEST_CASE("lines hide behind bodies unless they lie on top") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.meshes = {box({-2, -40, -40}, {2, 40, 40}, Finish::metal)};
    frame.lines = {{{20, 10, -30}, {20, 10, 30}, Rgb{1, 0, 0}, 3, false, false},
                   {{20, -10, -30}, {20, -10, 30}, Rgb{1, 0, 0}, 3, false, true}};
    const Image image = studio.draw(frame, camera);
    check_colour(seen_at(image, camera, {20, -10, 0}), Rgb{1, 0, 0});
    CHECK(seen_at(image, camera, {20, 10, 0})[0] < 200);
}

TEST_CASE("a dashed line has gaps") {
    Studio studio;
    Frame frame;
    frame.lines = {{{0, 0, -90}, {0, 0, 90}, Rgb{1}, 3, true, true}};
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

TEST_CASE("an opened tube shows what it holds, a whole one hides it") {
    Studio studio;
    const Camera camera = side_camera();
    const Rgb inside{0.05F, 0.5F, 0.1F};
    Frame frame;
    frame.meshes = {tube(25, 22)};
    frame.discs = {disc_towards_side({0, 0, 0}, 10, inside)};
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

TEST_CASE("a frame of the same revision is not sent again") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.discs = {disc_towards_side({0, 0, 0}, 12, Rgb{0.2F})};
    const Image first = studio.draw(frame, camera);
    frame.discs.clear();
    frame.revision = studio.revision;
    studio.renderer->upload(frame);
    REQUIRE(studio.renderer->draw(camera, {}, small).has_value());
    CHECK(studio.renderer->read_pixels() == first);
    CHECK(studio.draw(frame, camera) != first);
}

TEST_CASE("a picture that cannot be had is an error, and the last one stays") {
    Studio studio;
    const Image first = studio.draw(prisms_in_light(), side_camera());
    for (const PictureSize size :
         {PictureSize{.width = 0, .height = 100}, PictureSize{.width = 100, .height = 1000000}}) {
        const auto drawn = studio.renderer->draw(side_camera(), {}, size);
        REQUIRE_FALSE(drawn.has_value());
        CHECK(drawn.error().code == ErrorCode::no_graphics);
    }
    CHECK(studio.renderer->read_pixels() == first);
}

TEST_CASE("the quick variant shows the same things in the same places") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame = prisms_in_light();
    frame.meshes.push_back(tube(45, 42));
    const auto difference =
        compare(studio.draw(frame, camera), studio.draw(frame, camera, {}, draft(small)));
    REQUIRE(difference.has_value());
    CHECK(difference->mean < 12);  // edges are rougher and the halo is missing
}

TEST_CASE("an empty frame is an empty ground, lighter towards the top") {
    Studio studio;
    const Image image = studio.draw(Frame{}, side_camera());
    CHECK(brightness(image.at(160, 5)) > brightness(image.at(160, 235)));
    CHECK(image.at(10, 100)[2] > image.at(10, 100)[0]);  // bluish
}

TEST_CASE("a shader that does not exist is named") {
    const Studio studio;
    const auto program = Program::create("body", "no_such_shader");
    REQUIRE_FALSE(program.has_value());
    CHECK(program.error().code == ErrorCode::not_found);
    CHECK(program.error().where.file == "shaders/no_such_shader.frag");
}
