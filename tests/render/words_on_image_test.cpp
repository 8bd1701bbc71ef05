#include "render/words_on_image.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Image black(int width, int height) {
    Image image{width, height, {}};
    for (int i = 0; i < width * height; ++i)
        image.rgba.insert(image.rgba.end(), {0, 0, 0, 255});
    return image;
}

struct Extent {
    int left = 1 << 20;
    int right = -1;
    int top = 1 << 20;
    int bottom = -1;
};
Extent extent_of(const Image& image) {
    Extent found;
    for (int y = 0; y < image.height; ++y) {
        for (int x = 0; x < image.width; ++x) {
            if (image.at(x, y)[0] < 64) continue;
            found.left = std::min(found.left, x);
            found.right = std::max(found.right, x);
            found.top = std::min(found.top, y);
            found.bottom = std::max(found.bottom, y);
        }
    }
    return found;
}

}  // namespace

TEST_CASE("words begin at their place, stand on their baseline and are as wide as told") {
    Image image = black(300, 60);
    draw_words(image, {20, 40}, "HIH", 30, {255, 255, 255});
    const Extent found = extent_of(image);
    CHECK(found.left >= 20);
    CHECK(found.left < 25);
    CHECK(found.bottom <= 40);
    CHECK(found.bottom >= 38);
    CHECK(near(found.right, 20 + width_of_words("HIH", 30), 4));                  // a side bearing
    CHECK(near(width_of_words("HIHHIH", 30), 2 * width_of_words("HIH", 30), 2));  // a kern
    for (int y = 0; y < 60; ++y)
        for (int x = 0; x < 300; ++x)
            CHECK(image.at(x, y)[0] == image.at(x, y)[2]);
}

TEST_CASE("letters beyond the edge are left out, and any bytes can be drawn") {
    Image image = black(20, 20);
    draw_words(image, {-30, 5}, "wide words go over both edges", 40, {9, 200, 9});
    draw_words(image, {2, 18}, "é\xFF\xF0", 12, {9, 200, 9});
    CHECK(image.rgba.size() == 20 * 20 * 4);
}
