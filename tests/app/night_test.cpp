// The window at night, as it is shown: the whole picture with its panels, and its words against their ground.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "app/export/picture.hpp"
#include "base/srgb.hpp"
#include "desk/open_setup.hpp"
#include "support/painted_window.hpp"
#include "ui/kit/theme.hpp"
#include "ui/panels.hpp"

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

// As the contrast of WCAG 2.2, in the red channel alone.
double red_contrast(std::uint8_t a, std::uint8_t b) {
    const double bright = linear_from_srgb(std::max(a, b) / 255.0);
    const double dark = linear_from_srgb(std::min(a, b) / 255.0);
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
               * (0.2126 * linear_from_srgb((hex >> 16 & 255U) / 255.0)
                  + 0.7152 * linear_from_srgb((hex >> 8 & 255U) / 255.0)
                  + 0.0722 * linear_from_srgb((hex & 255U) / 255.0));
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

namespace {

// Red alone, and not merely dark.
void check_red(const Image& image) {
    std::uint8_t red = 0;
    std::uint8_t other = 0;
    for (std::size_t i = 0; i < image.rgba.size(); i += 4) {
        red = std::max(red, image.rgba[i]);
        other = std::max({other, image.rgba[i + 1], image.rgba[i + 2]});
    }
    CHECK(other == 0);
    CHECK(red > 100);
}

struct NightState {
    const char* name;
    std::function<void(PaintedWindow&)> go;
    bool keeps_pointer = false;
};

void begin_talk(PaintedWindow& window) {
    window.key(ImGuiKey_F5);
    window.key(ImGuiKey_Enter);
    REQUIRE(window.painter().transient.is_giving_talk());
}

constexpr WindowPainter::Size small{1000, 560};  // every frame is drawn on the processor

const std::array night_states{
    NightState{"menu of the setup", [](PaintedWindow& window) { window.click("file/menu"); }},
    NightState{"what else is drawn", [](PaintedWindow& window) { window.click("view/more"); }},
    NightState{"list of targets", [](PaintedWindow& window) { window.click("choose/target"); }},
    NightState{"tooltip", [](PaintedWindow& window) { window.point_at("file/menu"); }, true},
    NightState{"keyboard frame", [](PaintedWindow& window) { window.key(ImGuiKey_F6); }},
    NightState{"search", [](PaintedWindow& window) { window.key(ImGuiKey_K, ImGuiMod_Ctrl); }},
    NightState{"file dialog", [](PaintedWindow& window) { window.key(ImGuiKey_O, ImGuiMod_Ctrl); }},
    NightState{"take it with you",
               [](PaintedWindow& window) { window.key(ImGuiKey_E, ImGuiMod_Ctrl); }},
    NightState{
        "describe my setup",
        [](PaintedWindow& window) { window.key(ImGuiKey_N, ImGuiMod_Ctrl | ImGuiMod_Shift); }},
    NightState{"keys", [](PaintedWindow& window) { window.key(ImGuiKey_F1); }},
    NightState{"cautions", [](PaintedWindow& window) { window.click("status/cautions"); }},
    NightState{"choosing a tour", [](PaintedWindow& window) { window.key(ImGuiKey_F5); }},
    NightState{"talk", begin_talk},
    NightState{"notices and errors",
               [](PaintedWindow& window) {
                   window.session().welcome_dismissed = false;
                   window.painter().also_true = [](View& view) {
                       view.desk.message = {"The disk is full.", true};
                       view.desk.notices = {{12, "'lenght_mm' has no effect"}};
                   };
               }},
    NightState{"unsaved work was found",
               [](PaintedWindow& window) {
                   window.painter().also_true = [](View& view) {
                       view.files.lost_work = {{"Evening on the hill", ""}};
                   };
               }},
    NightState{"unsaved changes", [](PaintedWindow& window) {
                   window.key(ImGuiKey_DownArrow);
                   window.key(ImGuiKey_DownArrow);
                   window.key(ImGuiKey_DownArrow);
                   window.key(ImGuiKey_D, ImGuiMod_Ctrl);
                   window.key(ImGuiKey_Q, ImGuiMod_Ctrl);
               }}};

}  // namespace

TEST_CASE("at night menus, tooltips, dialogs, strips and talks are red alone, too") {
    const Image untouched = [] {
        PaintedWindow plain("3-fast-and-wide", small);
        plain.session().view.night = true;
        plain.settle();
        return plain.image();
    }();
    for (const NightState& state : night_states) {
        CAPTURE(std::string(state.name));
        PaintedWindow window("3-fast-and-wide", small);
        window.session().view.night = true;
        state.go(window);
        window.settle(state.keeps_pointer);
        const Image image = window.image();
        CHECK_FALSE((image == untouched));  // it has really come up
        check_red(image);
    }
}

TEST_CASE("at night the speaker's notes are red alone and can be read") {
    PaintedWindow window("3-fast-and-wide", small);
    window.session().view.night = true;
    begin_talk(window);
    window.key(ImGuiKey_S);
    window.settle();
    REQUIRE(window.painter().last.speaker.has_value());
    const auto notes = window.painter().notes({640, 480});
    REQUIRE(notes.has_value());
    check_red(*notes);
    // The dim words: 4.5 to 1 in the red channel (WCAG 2.2, success criterion 1.4.3) against black.
    std::map<std::uint8_t, int> reds;
    for (std::size_t i = 0; i < notes->rgba.size(); i += 4)
        ++reds[notes->rgba[i]];
    CHECK(reds.begin()->first == 0);  // the ground
    reds.erase(0);
    const auto most = std::max_element(
        reds.begin(), reds.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    CHECK(red_contrast(most->first, 0) >= 4.5);
}
