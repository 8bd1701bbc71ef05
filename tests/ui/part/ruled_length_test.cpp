// A stated light path beside the lengths over which it rules, and what counts while a number is not stated.
#include "document/setup_file.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

Setup demo(const std::string& name) {
    const auto read = load_file(BEAMFORK_SOURCE_DIR "/assets/demos/" + name + ".train.toml");
    REQUIRE(read.has_value());
    return read->document.setup;
}

}  // namespace

TEST_CASE("README's second step on the first demo: the stated path rules over the legs until it is "
          "unticked, then focus follows them") {
    Desk desk(demo("1-short-of-focus"));
    desk.select(desk.index<PrismDiagonal>());
    REQUIRE(desk.has("field/entry_leg_mm/note"));
    CHECK(desk.widget("field/entry_leg_mm/note").label.find("Stated light path")
          != std::string::npos);
    const auto drag_leg_shorter = [&] {
        desk.drag(desk.place("field/entry_leg_mm/slider", 0.2F),
                  desk.place("field/entry_leg_mm/slider", 0.1F));
    };
    const double short_by = desk.report().budget.shortfall.value;
    drag_leg_shorter();
    CHECK(desk.the<PrismDiagonal>().entry_leg < Millimetres{22});
    CHECK(near(desk.report().budget.shortfall.value, short_by, rounding));
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    desk.click("field/stated_light_path_mm/stated");
    CHECK_FALSE(desk.has("field/entry_leg_mm/note"));
    const double leg = desk.the<PrismDiagonal>().entry_leg.value;
    const double short_as_derived = desk.report().budget.shortfall.value;
    CHECK(near(short_as_derived, short_by, 0.1));  // 34.9 against the leaflet's 35
    drag_leg_shorter();
    const double shorter = leg - desk.the<PrismDiagonal>().entry_leg.value;
    CHECK(shorter > 1);
    CHECK(near(desk.report().budget.shortfall.value, short_as_derived - shorter, 1e-6));
}

TEST_CASE("a length that is not stated shows what counts in its place, and ticking it changes "
          "nothing") {
    Desk desk(demo("1-short-of-focus"));
    desk.select(desk.index<SplitterHead>());
    // 110 mm less 12 between the prisms and 87 / 1.571249 of glass leave 42.630: 14/44 before the cube.
    REQUIRE(desk.has("field/entry_air_mm/unstated"));
    CHECK(desk.widget("field/entry_air_mm/unstated").label
          == "unstated: 13.6 mm, derived from the stated light path");
    CHECK(desk.widget("field/seat_height_mm/unstated").label
          == "unstated: 29.1 mm, derived from the stated light path");
    CHECK(desk.widget("field/compensator_mm/unstated").label
          == "unstated: 37.0 mm, derived from the arm offset");
    CHECK(desk.has("field/prism_width_mm/note"));
    CHECK_FALSE(desk.has("field/exit_clear_diameter_mm/note"));
    desk.click("field/entry_air_mm/stated");
    REQUIRE(desk.the<SplitterHead>().entry_air.has_value());
    CHECK(near(desk.the<SplitterHead>().entry_air->value, 13.564,
               0.26));  // a slider's step of half a mm
    CHECK_FALSE(desk.the<SplitterHead>().seat_height.has_value());
    desk.wheel(desk.place("field/entry_air_mm/stated"), -10);
    REQUIRE(desk.the<SplitterHead>().stated_light_path.has_value());
    desk.click("field/stated_light_path_mm/stated");
    REQUIRE_FALSE(desk.the<SplitterHead>().stated_light_path.has_value());
    CHECK(desk.widget("field/seat_height_mm/unstated").label
          == "unstated: 30.0 mm, the usual value");
}

TEST_CASE("below a shifter's stated pair stands where it holds and what becomes of it here") {
    Desk desk(demo("2-shifter-cures-it"));
    desk.select(desk.index<Shifter>());
    REQUIRE(desk.has("field/stated_gain_mm/note"));
    // g M / (M - 1) = 65 * 2.6 / 1.6 mm (thin-lens equation).
    const std::string& note = desk.widget("field/stated_gain_mm/note").label;
    CHECK(note.find("2.60× and 65.0 mm hold 105.6 mm before the field stop") == 0);
    CHECK(note.find("no error") != std::string::npos);
}

TEST_CASE("a shifter's slider ends at the glass of the head behind it") {
    Desk desk(demo("2-shifter-cures-it"));
    desk.select(desk.index<Shifter>());
    desk.drag(desk.place("field/lens_offset_mm/slider", 0.5F),
              desk.place("field/lens_offset_mm/slider", 1.0F));
    // 13.564 mm before the cube.
    CHECK(near(desk.the<Shifter>().lens_offset.value, 13.5, 0.07));
    CHECK(desk.report().train.lens_rooms.front().inside() == 0);
}
