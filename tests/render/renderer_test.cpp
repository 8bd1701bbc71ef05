#include <cmath>

#include "render/program.hpp"
#include "render/renderer.hpp"
#include "studio.hpp"

using namespace beamfork;

TEST_CASE("a frame of the same revision is not sent again") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    frame.discs = {disc_towards_side({0, 0, 0}, 12, ColourRole::undivided_beam, 0.2F)};
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
    CHECK(difference->mean < 12);  // edges are rougher and the bloom is missing
}

TEST_CASE("a coarse draft shows the same things in the same places, in fewer pixels") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame = prisms_in_light();
    frame.meshes.push_back(tube(45, 42));
    const PictureSize coarse = draft(small, 0.5F);
    CHECK(coarse.width * 2 == small.width);
    const Image whole = studio.draw(frame, camera, {}, draft(small));
    const Image half = studio.draw(frame, camera, {}, coarse);
    REQUIRE(half.width * 2 == whole.width);
    double sum = 0;
    for (int y = 0; y < half.height; ++y) {
        for (int x = 0; x < half.width; ++x)
            sum += std::abs(brightness(half.at(x, y)) - brightness(whole.at(2 * x, 2 * y)));
    }
    CHECK(sum / (3.0 * half.width * half.height) < 12);  // edges are rougher
}

namespace {

double mean_brightness(const Image& image) {
    double sum = 0;
    for (int y = 0; y < image.height; ++y) {
        for (int x = 0; x < image.width; ++x)
            sum += brightness(image.at(x, y));
    }
    return sum / image.width / image.height;
}

}  // namespace

TEST_CASE("fewer rays carry the same light") {
    Studio studio;
    const Camera camera = side_camera();
    Frame frame;
    add_fan(frame, 60);
    const double ground = mean_brightness(studio.draw(Frame{}, camera, {}, draft(small)));
    float rank = 0;
    for (LightRibbon& ribbon : frame.light) {
        ribbon.rank = rank;
        rank = std::fmod(rank + 0.7549F, 1.0F);
    }
    const ViewOptions faint{.light_gain = 0.2F};  // the picture holds back what is bright
    const double all = mean_brightness(studio.draw(frame, camera, faint, draft(small))) - ground;
    REQUIRE(all > 0.5);
    for (const float rays : {0.5F, 0.25F}) {
        CAPTURE(rays);
        const Image few = studio.draw(frame, camera, faint, draft(small, 1, rays));
        CHECK(near((mean_brightness(few) - ground) / all, 1, 0.2));
    }
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
