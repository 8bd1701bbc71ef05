#include "base/srgb.hpp"
#include "render/night_pass.hpp"
#include "render/uploaded_picture.hpp"
#include "studio.hpp"

using namespace beamfork;

namespace {

double decoded(std::uint8_t step) { return linear_from_srgb(step / 255.0); }
// Of sRGB's primaries (ITU-R BT.709).
double luminance_of(const Pixel& pixel) {
    return 0.2126 * decoded(pixel[0]) + 0.7152 * decoded(pixel[1]) + 0.0722 * decoded(pixel[2]);
}

// One pixel of every mixture of nine steps of red, green and blue.
Image all_mixtures() {
    Image image{81, 9, {}};
    for (int y = 0; y < 9; ++y) {
        for (int x = 0; x < 81; ++x) {
            const auto step = [](int i) { return static_cast<std::uint8_t>(i * 255 / 8); };
            for (const std::uint8_t channel : {step(x % 9), step(x / 9), step(y), step(8)})
                image.rgba.push_back(channel);
        }
    }
    return image;
}

Image in_red(const Image& image, float brightness) {
    UploadedPicture picture;
    picture.upload(image.width, image.height, image.rgba);
    const auto pass = NightPass::create();
    const auto canvas = Canvas::create(image.width, image.height);
    REQUIRE(pass.has_value());
    REQUIRE(canvas.has_value());
    canvas->bind();
    pass->draw(picture.name(), brightness);
    return canvas->read_pixels();
}

}  // namespace

TEST_CASE("by night every colour becomes red as bright as it was, with no green and no blue") {
    const Studio studio;
    const Image day = all_mixtures();
    for (const float brightness : {1.0F, 0.5F}) {
        const Image night = in_red(day, brightness);
        for (int y = 0; y < day.height; ++y) {
            for (int x = 0; x < day.width; ++x) {
                // OpenGL's row 0 is at the bottom, the uploaded picture's at the top.
                const Pixel before = day.at(x, day.height - 1 - y);
                const Pixel after = night.at(x, y);
                CHECK(after[1] == 0);
                CHECK(after[2] == 0);
                // Both curves of the shader are within 0.003 of the standard, and rounding adds half a step.
                CHECK(near(after[0], encoded(brightness * luminance_of(before)), 2.5));
            }
        }
    }
}

TEST_CASE("a white ground waits for the day") {
    ViewOptions options;
    options.light_ground = true;
    CHECK(options.on_light_ground());
    options.night = true;
    CHECK_FALSE(options.on_light_ground());
}
