// The window at night, as it is shown: the whole picture with its panels, and its words against their ground.
#include <algorithm>
#include <cmath>

#include "app/open_setup.hpp"
#include "app/picture.hpp"
#include "ui/panels.hpp"
#include "ui/theme.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Image window_at_night(const std::string& study, bool light_ground) {
    const auto read = open_named("3-fast-and-wide");
    REQUIRE(read.has_value());
    MakePicture command;
    command.width = 1280;
    command.height = 720;
    command.with_panels = true;
    command.study = study;
    command.study_is_wide = true;
    command.options.night = true;
    command.options.light_ground = light_ground;
    auto image = make_picture(read->document, command);
    REQUIRE_MESSAGE(image.has_value(), (image ? "" : to_text(image.error())));
    return *std::move(image);
}

double decoded(double shown) {  // IEC 61966-2-1:1999
    return shown <= 0.04045 ? shown / 12.92 : std::pow((shown + 0.055) / 1.055, 2.4);
}

// As the contrast of WCAG 2.2, in the red channel alone.
double red_contrast(std::uint8_t a, std::uint8_t b) {
    const double bright = decoded(std::max(a, b) / 255.0);
    const double dark = decoded(std::min(a, b) / 255.0);
    return (bright + 0.05) / (dark + 0.05);
}

}  // namespace

TEST_CASE("at night nothing in the window is of another colour than red, whatever is shown") {
    for (const PanelEntry& entry : panels()) {
        if (!entry.is_study()) continue;
        CAPTURE(std::string(entry.stem));
        const Image image = window_at_night(std::string(entry.stem), false);
        std::uint8_t red = 0;
        std::uint8_t other = 0;
        for (std::size_t i = 0; i < image.rgba.size(); i += 4) {
            red = std::max(red, image.rgba[i]);
            other = std::max({other, image.rgba[i + 1], image.rgba[i + 2]});
        }
        CHECK(other == 0);
        CHECK(red > 150);  // it is not merely dark
    }
}

TEST_CASE("at night words keep the contrast of level AA against the top bar, in red") {
    const Image image = window_at_night("magnification", true);
    std::uint8_t ground = 255;
    std::uint8_t words = 0;
    for (int y = 4; y < 40; ++y) {
        for (int x = 2; x < 300; ++x) {
            ground = std::min(ground, image.at(x, y)[0]);
            words = std::max(words, image.at(x, y)[0]);
        }
    }
    CHECK(red_contrast(words, ground) >= 4.5);  // WCAG 2.2, success criterion 1.4.3
}

TEST_CASE("at night a white ground stays dark") {
    const Image dark = window_at_night("magnification", false);
    const Image light = window_at_night("magnification", true);
    CHECK(dark == light);
}

TEST_CASE("dimmed for the night, every tone of text stays readable on panels and buttons") {
    const double brightness = ViewOptions{}.night_brightness;
    const auto dimmed = [&](std::uint32_t hex) {  // luminance by WCAG 2.2, then as NightPass says
        return brightness
               * (0.2126 * decoded((hex >> 16 & 255U) / 255.0)
                  + 0.7152 * decoded((hex >> 8 & 255U) / 255.0)
                  + 0.0722 * decoded((hex & 255U) / 255.0));
    };
    for (const Tone ground : {Tone::ground, Tone::panel, Tone::raised}) {
        for (const Tone ink : {Tone::text, Tone::text_dim, Tone::danger, Tone::accent}) {
            const double ratio = (dimmed(srgb_hex(ink)) + 0.05) / (dimmed(srgb_hex(ground)) + 0.05);
            CAPTURE(static_cast<int>(ground));
            CAPTURE(static_cast<int>(ink));
            CHECK(ratio >= 4.5);
        }
    }
}
