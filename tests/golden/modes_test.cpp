// The look of the window's modes, as golden_test.cpp guards the demos'. Words are in these pictures: another
// version of the typeface or of Mesa may shift single pixels of letters.
#include "golden/compare_golden.hpp"
#include "support/painted_window.hpp"

using namespace beamfork;

namespace {

constexpr WindowPainter::Size mode_size{1120, 630};

void check_mode(const std::string& name,
                const std::string& demo,
                const std::function<void(PaintedWindow&)>& go,
                WindowPainter::Size size = mode_size) {
    PaintedWindow window(demo, size);
    go(window);
    window.settle();
    compare_with_golden(window.image(), "mode-" + name);
}

void compare_with_shifter(PaintedWindow& window, CompanionPlace place) {
    window.session().layout.study = "comparison";
    window.session().comparison.with = "demo:assets/demos/2-shifter-cures-it.train.toml";
    window.session().comparison.place = place;
    window.session().layout.folded = {"findings", "train", "part"};
    window.frames(2);
    window.session().pose.camera_is_set = false;  // with both in it
}

}  // namespace

TEST_CASE("the night") {
    check_mode("night", "3-fast-and-wide",
               [](PaintedWindow& window) { window.session().view.night = true; });
}

TEST_CASE("two setups over and beside each other, and in two halves") {
    for (const auto& way : {std::pair{"over", CompanionPlace::over},
                            {"beside", CompanionPlace::beside},
                            {"split", CompanionPlace::split}})
        check_mode(way.first, "1-short-of-focus",
                   [&](PaintedWindow& window) { compare_with_shifter(window, way.second); });
}

TEST_CASE("the panel that varies a number, over the whole strip") {
    check_mode("tune", "2-shifter-cures-it", [](PaintedWindow& window) {
        window.session().layout.study = "tune";
        window.session().layout.study_is_wide = true;
    });
}

TEST_CASE("a step of a talk") {
    check_mode("talk", "2-shifter-cures-it", [](PaintedWindow& window) {
        window.key(ImGuiKey_F5);
        window.key(ImGuiKey_Enter);
        for (int i = 0; i < 2; ++i)
            window.key(ImGuiKey_RightArrow);
        window.painter().transient.state().talk.talk->flight_done = 1;
    });
}

TEST_CASE("questions about the first setup") {
    check_mode("describe", "1-short-of-focus", [](PaintedWindow& window) {
        window.key(ImGuiKey_N, ImGuiMod_Ctrl | ImGuiMod_Shift);
    });
}

TEST_CASE("letters of twice the size, the column folded for them") {
    check_mode("large-text", "3-fast-and-wide",
               [](PaintedWindow& window) {
                   window.session().layout.text_scale = 2;
                   window.session().layout.folded = {"findings", "train", "part"};
                   window.session().pose.camera_is_set = false;
               },
               {1600, 900});
}
