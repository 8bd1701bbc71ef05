#include <cmath>
#include <numbers>

#include "scene/sample_setups.hpp"
#include "scene/sight_view/sight_view_picture.hpp"
#include "scene/sight_view/sight_view_rows.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Sights sights_at(const Setup& setup) { return sights_of(setup, report_of(setup, 64)); }

// Light of a part of the picture, and its middle of mass.
struct Patch {
    double light = 0;
    glm::dvec2 middle{0};
};
Patch patch_of(const SightLight& picture, int from, int to) {
    Patch patch;
    for (int y = 0; y < picture.pixels; ++y) {
        for (int x = from; x < to; ++x) {
            const auto light = static_cast<double>(picture.at(x, y).g);
            patch.light += light;
            patch.middle += light * glm::dvec2{x + 0.5, y + 0.5};
        }
    }
    patch.middle /= patch.light;
    return patch;
}

}  // namespace

TEST_CASE("a double star of separation s appears s times the magnification apart, its companion "
          "fainter by the stated magnitudes") {
    const Sights sights = sights_at(test_setups::wide_setup());
    SightRequest request;
    request.scene = {SightSubject::double_star, 44, 60, 2, 1};
    request.closer = 20;
    const SightFrame frame = frame_of(sights, request);
    const SightLight picture = draw_light(sights[0], request.scene, frame);
    const Patch left = patch_of(picture, 0, picture.pixels / 2);
    const Patch right = patch_of(picture, picture.pixels / 2, picture.pixels);
    const double expected = 60 * arcsecond * sights[0].magnification() * frame.pixels / frame.shown;
    CHECK(expected > 40);
    CHECK(near(glm::distance(left.middle, right.middle), expected, 1));  // a pixel
    // 2 magnitudes are a ratio of 10^0.8 = 6.3096 (N. R. Pogson, MNRAS 17, 12-15, 1856); the tails of the
    // diffraction that cross the middle are below 1 %.
    const double ratio = std::max(left.light / right.light, right.light / left.light);
    CHECK(near(ratio, 6.3096, 0.07));
}

TEST_CASE("the edge of the field is as dim as the clipped light says") {
    const Sights sights = sights_at(clipping_setup());
    EyeSight unclipped = sights[0];
    for (LitPoint& point : unclipped.lit.points)
        point.relative = 1;
    SightRequest request;
    request.scene.subject = SightSubject::daytime;
    request.pixels = 96;
    const SightFrame frame = frame_of(sights, request);
    const SightLight dim = draw_light(sights[0], request.scene, frame);
    const SightLight full = draw_light(unclipped, request.scene, frame);
    int compared = 0;
    double darkest = 1;
    for (int y = 0; y < 96; y += 3) {
        for (int x = 0; x < 96; x += 3) {
            const glm::dvec2 apparent = glm::dvec2{x + 0.5 - 48, 48 - y - 0.5} * (frame.shown / 96);
            const glm::dvec2 at =
                stop_of_apparent(sights[0], apparent) / sights[0].stop_radius.value;
            if (glm::length(at) > 0.97 || full.at(x, y).g < 1e-4F) continue;
            const auto share = static_cast<double>(dim.at(x, y).g / full.at(x, y).g);
            CHECK(near(share, relative_at(sights[0].lit, at), 1e-5));  // floats
            darkest = std::min(darkest, share);
            ++compared;
        }
    }
    CHECK(compared > 300);
    CHECK(darkest < 0.9);  // there was dimming to be seen
}

TEST_CASE("the merged view is the mean of both eyes, and two images apart make a double one") {
    Sights sights = sights_at(test_setups::wide_setup());
    // As a prism that stands askew would do it: 0.6 mm at an eyepiece of 25 mm are 82.5 arcminutes.
    sights[1].axis_image = {0.6, 0};
    CHECK(near(misalignment_arcmin(sights[0], sights[1]), 82.506, 1e-3));  // last digit
    SightRequest request;
    request.scene = {SightSubject::double_star, 44, 2, 6, 1};
    request.closer = 8;
    const SightFrame frame = frame_of(sights, request);
    const SightLight left = draw_light(sights[0], request.scene, frame);
    const SightLight right = draw_light(sights[1], request.scene, frame);
    const double moved = patch_of(right, 0, 280).middle.x - patch_of(left, 0, 280).middle.x;
    CHECK(near(moved, 0.6 / 25 * 280 / frame.shown, 0.5));  // half a pixel
    const SightLight both = mean_of(left, right);
    for (const int x : {100, 140, 170}) {
        CHECK(near(both.at(x, 139).g, (left.at(x, 139).g + right.at(x, 139).g) / 2, 1e-6));
    }
    CHECK(near(patch_of(both, 0, 280).light,
               (patch_of(left, 0, 280).light + patch_of(right, 0, 280).light) / 2,
               1e-4 * patch_of(both, 0, 280).light));
}

TEST_CASE("a star in focus has its first dark ring at 1.22 wavelengths over the exit pupil") {
    const Sights sights = sights_at(test_setups::wide_setup());
    SightRequest request;
    request.scene = {SightSubject::double_star, 44, 0.0, 10, 1};  // both at the middle
    request.closer = 150;
    const SightFrame frame = frame_of(sights, request);
    const SightLight picture = draw_light(sights[2], request.scene, frame);
    // Exit pupil 100 / 28 mm; Smith Eq. 9.16.
    const double ring = 1.21967 * 0.000546074 / (100.0 / 28) * 280 / frame.shown;
    REQUIRE(ring > 8);
    int darkest = 1;
    for (int x = 1; x < 1.5 * ring; ++x) {
        if (picture.at(140 + x, 140).g < picture.at(140 + darkest, 140).g) darkest = x;
    }
    // Pixel 140's own middle lies half a pixel beside the star; two pixels for the two samplings.
    CHECK(near(darkest + 0.5, ring, 1.5));
    CHECK(picture.at(140 + darkest, 140).g < 0.01F * picture.at(140, 140).g);
}

TEST_CASE("star fields are as crowded as the sky and the same for the same seed") {
    // Round numbers from memory: 4800 stars to magnitude 6, 2.5 million to 11.5, over 41253 square degrees.
    CHECK(near(stars_per_square_degree(6) * 41252.96, 4800, 0.1));
    CHECK(near(stars_per_square_degree(11.5) / 2.5e6 * 41252.96, 1, 1e-9));
    const double radius = std::tan(std::numbers::pi / 180);  // pi square degrees
    SightScene scene;
    scene.subject = SightSubject::stars;
    const auto stars = stars_of(scene, radius, 11.5);
    REQUIRE_FALSE(stars.empty());
    CHECK(near(static_cast<double>(stars.size()), 60.60 * std::numbers::pi, 1));
    for (const SkyStar& star : stars) {
        CHECK(glm::length(star.at) <= radius);
        CHECK(star.magnitude <= 11.5);
    }
    const auto again = stars_of(scene, radius, 11.5);
    CHECK(again.front().at == stars.front().at);
    SightScene other = scene;
    other.seed = 2;
    CHECK(stars_of(other, radius, 11.5).front().at != stars.front().at);
}

TEST_CASE(
    "out of focus the Moon stands still in its picture and blurs by the cone's width at the stop") {
    // In an f/7 cone a point s mm before the stop is s / 7 wide there; seen from 700 mm half of that is s / 9800 as an
    // angle: so far light reaches beyond the limb, 15.5 arcminutes from the middle.
    const Setup blurred = short_setup();
    const double beyond = report_of(blurred).budget.shortfall.value / 9800 / (60 * arcsecond);
    REQUIRE(beyond > 10);
    const Setup sharp = cured_setup();
    SightRequest request;
    request.pixels = 200;
    const auto reach = [&](const Setup& setup) {
        const Sights sights = sights_of(setup, report_of(setup));
        request.closer = 1;
        const SightFrame frame = frame_of(sights, request);
        const SightLight picture = draw_light(sights[0], request.scene, frame);
        // Where the limb on the lit side is brighter than a 500th of the brightest place, from the middle, arcminutes.
        float most = 0;
        for (const glm::vec3& light : picture.light)
            most = std::max(most, light.g);
        double farthest = 0;
        for (int y = 0; y < request.pixels; ++y) {
            for (int x = 0; x < request.pixels; ++x) {
                if (picture.at(x, y).g < most / 500) continue;
                farthest = std::max(farthest, std::hypot(x + 0.5 - request.pixels / 2.0,
                                                         y + 0.5 - request.pixels / 2.0));
            }
        }
        return farthest / request.pixels * frame.shown / sights[0].magnification()
               / (60 * arcsecond);
    };
    const double pixel = 0.6;  // arcminutes, of 1.8 degrees
    CHECK(near(reach(sharp), 15.5, 2 * pixel));
    CHECK(near(reach(blurred), 15.5 + beyond, 3 * pixel));  // its outermost light is faint
}

TEST_CASE("every subject and layout makes a picture of its size with something in it") {
    const Sights sights = sights_at(cured_setup());
    for (const SightSubject subject : all_sight_subjects) {
        for (const SightLayout layout :
             {SightLayout::left_and_right, SightLayout::merged, SightLayout::one_and_two}) {
            SightRequest request;
            request.scene.subject = subject;
            request.layout = layout;
            request.pixels = 96;
            const SightImage image = draw_sight(sights, fitted(request, sights));
            CHECK(image.height == 96);
            CHECK(image.width == 96 * static_cast<int>(picture_names(layout).size()));
            REQUIRE(image.rgba.size() == static_cast<std::size_t>(image.width * image.height * 4));
            int bright = 0;
            for (std::size_t i = 0; i < image.rgba.size(); i += 4)
                bright += image.rgba[i] > 60 ? 1 : 0;
            CHECK(bright > 3);
        }
    }
}

TEST_CASE("how the image stands is told in words") {
    EyeSight sight;
    const auto words = [&](double xx, double xy, double yx, double yy) {
        // Columns of the map from slopes; a straight telescope has F on its diagonal.
        sight.stop_from_slope = {{xx, xy}, {yx, yy}};
        return orientation_words(sight);
    };
    CHECK(words(700, 0, 0, 700) == "turned by 180°");
    CHECK(words(-700, 0, 0, -700) == "upright");
    CHECK(words(700, 0, 0, -700) == "mirrored left-right");
    CHECK(words(-700, 0, 0, 700) == "mirrored up-down");
    CHECK(words(0, 700, -700, 0) == "turned by 90° clockwise");
    CHECK(words(0, 700, 700, 0) == "mirrored left-right and turned by 90° anticlockwise");
    // A star diagonal makes a refractor's image upright and mirrored (any telescope's handbook).
    CHECK(orientation_words(sights_at(cured_setup())[2]) == "turned by 180°");
    CHECK(orientation_words(sights_at(cured_setup())[0]).find("mirrored") == 0);
}
